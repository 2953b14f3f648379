using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

[Truth(Grade.Property, "the guide's own example")]
public class GuideTests
{
    static string Text(params string[] path)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine([folder.FullName, .. path]))) folder = folder.Parent;
        return File.ReadAllText(Path.Combine([folder!.FullName, .. path]));
    }

    [Fact]
    public void The_guides_rail_is_strained_as_the_guide_states()
    {
        var guide = Text("docs", "guide", "rail.md");
        var made = MadeRail.Of(RailJson.Read(guide.Split("```json")[1].Split("```")[0]).Value, new Din6935(), 28).Value;
        Assert.Contains($"the lower flange stretches {made.Strains[0].Stretch * 100:0.0} % and the upper shrinks {made.Strains[1].Shrink * 100:0.0} % at the free edge", guide.ReplaceLineEndings(" "));
    }

    [Theory]
    [InlineData("rail-chassis.json")]
    [InlineData("rail-kickup.json")]
    public void The_vans_rails_can_be_made_in_every_way_offered(string file)
    {
        var rail = RailJson.Read(Text("demo", "shapes", file)).Value;
        for (var proposal = 1; proposal <= 4; proposal++)
        {
            var made = MadeRail.Of(rail, new Din6935(), 28, proposal).Value;
            Assert.NotEmpty(made.Kit.Pieces);
            Assert.Equal(rail.Holes.Length, made.Kit.Pieces.Sum(p => p.Openings.Length + p.Witnesses.Count(w => w.Line.Length == 1 && w.Words.Contains(" after "))));
        }
    }
}
