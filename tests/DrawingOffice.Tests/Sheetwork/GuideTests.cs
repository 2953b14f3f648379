using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

public class GuideTests
{
    [Fact]
    public void The_guides_bracket_has_the_blank_the_guide_states()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "docs", "guide", "blank.md"))) folder = folder.Parent;
        var guide = File.ReadAllText(Path.Combine(folder!.FullName, "docs", "guide", "blank.md"));
        var json = guide.Split("```json")[1].Split("```")[0];
        var blank = Develop.Blank(BracketJson.Read(json).Value.ToFaceTree().Value, new Din6935()).Value;
        var (x, y) = (blank.Outline.Corners.Select(c => c.At.X), blank.Outline.Corners.Select(c => c.At.Y));
        Assert.Contains($"{x.Max() - x.Min():0.00} by {y.Max() - y.Min():0.00} mm", guide);
    }
}
