using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Drafting.Solid;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.Tests.DrawingOffice.Drafting.Solid;

public sealed class SolidDrawingTests
{
    static SolidDrawing Draw(SolidPart part, Projection projection = Projection.FirstAngle) => SolidDrawing.Draw(part, Parts.Title("Trial") with { Projection = projection });

    [Fact]
    [Truth(Grade.Property, "lettering neither on lettering nor off the paper, whatever the setting angle")]
    public void Nothing_overlaps_on_brackets_of_many_angles()
    {
        foreach (var lean in new[] { -0.3, 0, 0.1, 0.26, 0.6 })
            foreach (var projection in Enum.GetValues<Projection>())
                foreach (var sheet in Draw(Brackets.Step(lean), projection).Sheets)
                {
                    Assert.Null(Sheets.Overlap(sheet));
                    Assert.Null(Sheets.OffPaper(sheet));
                }
    }

    [Fact]
    [Truth(Grade.FromMemory, "ISO 5456-2: first angle sets the plan under the front and the view from the left on its right; third angle the plan over it and the view from the right on its right")]
    public void The_plan_stands_where_its_angle_of_projection_sets_it()
    {
        // The big hole of the back is a circle nearly full in front; those of the floor are circles in the plan.
        (Vec2 Floor, Vec2 Ear) Places(Projection projection)
        {
            var circles = Draw(Brackets.Step(0), projection).Sheets[0].Marks.OfType<CircleMark>().Where(c => c.Layer == Layers.Holes).ToList();
            var scale = circles.Max(c => c.Radius) / 12.7;
            var front = circles.MaxBy(c => c.Radius)!.Centre;
            return (circles.First(c => Math.Abs(c.Radius - 4.2 * scale) < 1e-6).Centre - front, circles.First(c => Math.Abs(c.Radius - 5.25 * scale) < 1e-6).Centre - front);
        }
        var (first, third) = (Places(Projection.FirstAngle), Places(Projection.ThirdAngle));
        Assert.True(first.Floor.Y < 0 && third.Floor.Y > 0);
        Assert.True(third.Ear.X > 0);
    }

    [Fact]
    [Truth(Grade.Property, "the setting angle that is not square is drawn once, in the view that sees both faces edge-on; square ones stay in the table")]
    public void A_leaning_back_shows_its_angle()
    {
        var drawing = Draw(Brackets.Step(15 * Math.PI / 180));
        var angle = Assert.Single(drawing.Dimensions, d => d.IsAngle);
        Assert.Equal(("105°", "A to B, setting angle"), (angle.Text, angle.What));
        Assert.Contains(drawing.Sheets.SelectMany(Sheets.Texts), t => t.Text == "105.00°");
        Assert.DoesNotContain(Draw(Brackets.Step(0)).Dimensions, d => d.IsAngle);
    }

    [Fact]
    [Truth(Grade.Property, "an edge is dimensioned at its true length, in one view only")]
    public void Every_length_is_dimensioned_once_and_true()
    {
        var part = Brackets.Step(0.26);
        var lengths = Draw(part).Dimensions.Where(d => !d.IsAngle).ToList();
        Assert.Equal(lengths.Count, lengths.Select(d => d.What).Distinct().Count());
        Assert.All(lengths, d => Assert.Equal(part.Lines.First(l => d.What.StartsWith($"{l.Id},", StringComparison.Ordinal)).Length!.Value.Value, double.Parse(d.Text, System.Globalization.CultureInfo.InvariantCulture), 0.006));
        Assert.Contains(lengths, d => d.What.StartsWith("E1,", StringComparison.Ordinal));
    }

    [Fact]
    [Truth(Grade.Property, "what the readings do not hold is dashed in the warning tone, has no figure, and hides nothing")]
    public void A_loose_ear_is_drawn_dashed_and_has_no_dimension()
    {
        var drawing = Draw(Brackets.Step(0.26, looseEar: true));
        Assert.DoesNotContain(drawing.Dimensions, d => d.What.StartsWith("E9,", StringComparison.Ordinal));
        Assert.Contains(drawing.Sheets[0].Marks, m => m is { Tone: Tone.Warn, Stroke: Stroke.Hidden });
        Assert.Contains(drawing.Sheets.SelectMany(Sheets.Texts), t => t.Text == "loose");
        var picture = SolidPicture.Draw(Brackets.Step(0.26, looseEar: true), SolidPictureOptions.Pictorial);
        Assert.Contains(Sheets.Texts(picture), t => t.Text.StartsWith("Not held by the readings: P7, P8, H4, face C", StringComparison.Ordinal));
    }

    [Fact]
    [Truth(Grade.Property, "seen from behind, the back hides what lies before it; a wireframe shows all")]
    public void A_face_hides_what_lies_behind_it_and_a_wireframe_hides_nothing()
    {
        var part = Brackets.Step(0);
        var behind = new SolidPictureOptions(Sight.Turned(Math.PI, 0.2), Hide: true, []);
        Assert.Contains(SolidPicture.Draw(part, behind).Marks, m => m.Layer == Layers.Hidden);
        Assert.DoesNotContain(SolidPicture.Draw(part, behind with { Hide = false }).Marks, m => m.Layer == Layers.Hidden);
        foreach (var options in new[] { SolidPictureOptions.Pictorial, SolidPictureOptions.Wireframe, behind }) Assert.Null(Sheets.Overlap(SolidPicture.Draw(part, options)));
    }

    [Fact]
    [Truth(Grade.Property, "a part with nothing on it or a place that is no number is refused in a sentence")]
    public void An_empty_part_is_refused()
    {
        var empty = new SolidPart("Nothing", [], [], [], [], [], [], []);
        Assert.Contains("at least one corner", Assert.Throws<RefusedException>(() => Draw(empty)).Message);
        var wild = empty with { Points = [new("P1", new(double.NaN, 0, 0), 0.1, false)] };
        Assert.Contains("finite", Assert.Throws<RefusedException>(() => Draw(wild)).Message);
    }

    [Fact]
    [Truth(Grade.Property, "edges that close round a face are its outline; a gap or a fork leaves it without one")]
    public void An_outline_is_only_what_edges_close()
    {
        var corners = new Dictionary<string, Vec3> { ["a"] = new(0, 0, 0), ["b"] = new(10, 0, 0.1), ["c"] = new(10, 10, 0), ["d"] = new(0, 10, 0), ["e"] = new(5, 5, 8) };
        (string, string)[] closed = [("a", "b"), ("b", "c"), ("c", "d"), ("d", "a"), ("a", "e")];
        Assert.Equal(4, FaceOutline.Of(default, new(0, 0, 1), corners, closed).Length);
        Assert.Empty(FaceOutline.Of(default, new(0, 0, 1), corners, closed[..3]));
        Assert.Empty(FaceOutline.Of(default, new(0, 0, 1), corners, [.. closed, ("a", "c")]));
    }
}
