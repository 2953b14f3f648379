using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Transitions;

public class GuideTests
{
    [Fact]
    [Truth(Grade.Property, "the figures that docs/guide/transition.md states are those that come out")]
    public void The_guides_duct_has_the_blank_the_guide_states()
    {
        var guide = File.ReadAllText(Path.Combine(Root("docs/guide/transition.md"), "docs", "guide", "transition.md"));
        var json = guide.Split("```json")[1].Split("```")[0];
        var made = Made.Of(TransitionJson.Read(json).Value).Value;
        var (x, y) = (made.Kit.Pieces[0].Outline.Corners.Select(c => c.At.X), made.Kit.Pieces[0].Outline.Corners.Select(c => c.At.Y));
        Assert.Contains($"{x.Max() - x.Min():0.0} by {y.Max() - y.Min():0.0} mm", guide);
        Assert.Contains($"in {made.Accuracy.Triangles} flat triangles", guide);
        Assert.Contains($"further off than {made.Accuracy.Chord:0.000} mm", guide);
        Assert.Contains($"falls short by {made.Accuracy.Short:0.000} mm", guide);
    }

    [Fact]
    [Truth(Grade.Property, "every demonstration file of this kind is made, and its pieces do not run into themselves")]
    public void Every_demonstration_shape_is_made()
    {
        var folder = Path.Combine(Root("demo/shapes"), "demo", "shapes");
        var files = Directory.GetFiles(folder, "transition-*.json").Concat(Directory.GetFiles(folder, "tube-*.json")).ToList();
        Assert.True(files.Count >= 8);
        foreach (var file in files)
        {
            var made = Made.Of(TransitionJson.Read(File.ReadAllText(file)).Value).Value;
            Assert.All(made.Kit.Pieces, p => Assert.True(p.Outline.SignedArea > 0, p.Name));
            Assert.DoesNotContain(made.Kit.Cautions, c => c.Kind == DrawingOffice.Sheetwork.CautionKind.BlankOverlaps);
        }
    }

    static string Root(string holds)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Path.Exists(Path.Combine(folder.FullName, holds))) folder = folder.Parent;
        return folder!.FullName;
    }
}
