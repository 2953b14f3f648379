using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Tests;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Tests.Fabrication;

public class GuideTests
{
    static string Guide(string page)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "docs", "guide", page))) folder = folder.Parent;
        return File.ReadAllText(Path.Combine(folder!.FullName, "docs", "guide", page));
    }

    [Fact]
    [Truth(Grade.Property, "docs/guide/split.md: the example's pieces, weld, setting angle and plugs")]
    public void The_guides_bracket_splits_as_the_guide_says()
    {
        var guide = Guide("split.md");
        var model = FaceModel.Of(PressingJson.Read(guide.Split("```json")[1].Split("```")[0]).Value).Value;
        var choice = Splitter.Find(model, SheetShop.Usual, SplitWork.Usual, new Din6935()).Value.Choices[0];
        var kit = SplitKit.Of(model, choice).Value;
        var joint = model.Joints.Single(j => !choice.Folded.Contains(j.Index));
        var plugs = kit.Seams.Single(s => s.Id == "base to floor");
        var degree = Math.PI / 180;
        Assert.Contains(FormattableString.Invariant($"{choice.Pieces.Length} piece with {choice.Folded.Length} folds and {choice.WeldLength:0} mm of weld; the corner is set to {joint.SettingAngle / degree:0.00}° ± {2 * joint.Std / degree:0.00}°, and {plugs.Count} plug holes of {plugs.Size:0} mm"), guide);
    }

    [Fact]
    [Truth(Grade.Property, "docs/guide/setting.md: height, blocks and angle of the sine bar")]
    public void The_guides_sine_bar_is_stacked_as_the_guide_says()
    {
        var set = SineBar.Set(37.5 * Math.PI / 180, 100, SlipSets.Of("m88").Value).Value;
        var blocks = string.Join(" + ", set.Stack.Blocks.Select(b => FormattableString.Invariant($"{b:0.####}")));
        Assert.Contains(FormattableString.Invariant($"{set.Exact:0.0000} mm; from the set of 88: {blocks} = {set.Stack.Height.Value:0.####} mm, which gives {set.Angle.Value * 180 / Math.PI:0.0000}° ± {set.Angle.Expanded * 180 / Math.PI * 3600:0} seconds of arc"), Guide("setting.md"));
    }
}
