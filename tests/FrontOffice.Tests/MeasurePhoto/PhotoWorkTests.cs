using WitnessMark.DrawingOffice.Photo;
using WitnessMark.FrontOffice.MeasurePhoto;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.MeasurePhoto;

public class PhotoWorkTests
{
    static readonly PhotoWork Full = new()
    {
        Target = "a4",
        CheckX = 99.8,
        CheckY = 100.1,
        Thickness = 1.6,
        ThicknessWithin = 0.2,
        Focal35 = 26,
        Across = 1500,
        Corners = [new(new(10, 20), new(-50, -40)), new(new(900.5, 22), new(50, -40)), new(new(880, 700), new(50, 40)), new(new(15, 690), new(-50, 40))],
        Picks = [new("H1", PickKind.Hole, [new(100, 200)]), new("E1", PickKind.Outline, [new(1, 2), new(3, 4), new(5, 6)], Closed: true)],
    };

    [Fact]
    [Truth(Grade.Property, "what is written is read back the same, field for field")]
    public void Work_is_read_back_as_it_was_written()
    {
        var back = PhotoWorkJson.Read(PhotoWorkJson.Write(Full)).Value;
        Assert.Equal(PhotoWorkJson.Write(Full), PhotoWorkJson.Write(back));
        Assert.Equal((Full.Thickness, Full.Across, Full.Focal35, Full.ThicknessWithin), (back.Thickness, back.Across, back.Focal35, back.ThicknessWithin));
        Assert.Equal(Full.Corners.AsEnumerable(), back.Corners);
        Assert.Equal(Full.Picks[1].Clicks.AsEnumerable(), back.Picks[1].Clicks);
        Assert.Equal("{}", PhotoWorkJson.Write(new()));
    }

    [Fact]
    [Truth(Grade.Property, "places of a picture of 1500 px lie twice as far along in one of 3000; places without a width are left")]
    public void Places_follow_the_picture_s_size()
    {
        var twice = Full.In(3000);
        Assert.Equal(new Vec2(200, 400), twice.Picks[0].Clicks[0]);
        Assert.Equal(new Tie(new(1801, 44), new(50, -40)), twice.Corners[1]);
        Assert.Equal(new Vec2(100, 200), (Full with { Across = null }).In(3000).Picks[0].Clicks[0]);
    }

    [Theory]
    [InlineData("""{"picks":[{"name":"H1","kind":"whole","clicks":[[1,2]]}]}""", "write hole, corner, outline")]
    [InlineData("""{"picks":[{"name":"H1","kind":"hole","clicks":[[1,2],[3,4]]}]}""", "one click")]
    [InlineData("""{"picks":[{"name":"E1","kind":"outline","clicks":[[1,2]]}]}""", "2 to 500 clicks")]
    [InlineData("""{"picks":[{"name":"<b>","kind":"hole","clicks":[[1,2]]}]}""", "letters, digits")]
    [InlineData("""{"picks":[{"name":"H1","kind":"hole","clicks":[[1,2]]},{"name":"h1","kind":"hole","clicks":[[3,2]]}]}""", "a name of its own")]
    [InlineData("""{"thikness":2}""", "known here")]
    [InlineData("""{"check_x":-5}""", "more than 0")]
    [InlineData("""{"across":0}""", "width in px")]
    [InlineData("""{"picks":""", "not complete JSON")]
    [Truth(Grade.Property, "a slip of the pen is told in one sentence and nothing is taken")]
    public void A_slip_is_told(string json, string words) => Assert.Contains(words, PhotoWorkJson.Read(json).Refusal!.Sentence);

    [Fact]
    [Truth(Grade.Property, "the first free number of each kind, whatever the capitals")]
    public void The_next_pick_gets_a_free_name()
    {
        Assert.Equal(("H3", "C1", "E2"), (Full.Free(PickKind.Hole, ["h2"]), Full.Free(PickKind.Corner, []), Full.Free(PickKind.Outline, [])));
    }
}
