using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.Trade;

namespace WitnessMark.Tests.FrontOffice.DevelopTransition;

[Truth(Grade.Property, "paper is printed at full size and never bought as sheet; sheet is nested")]
public class TransitionFilesTests
{
    static List<string> Files(string demo)
    {
        var made = WitnessMark.FrontOffice.DevelopTransition.DevelopTransition.Run(
            WitnessMark.FrontOffice.DevelopTransition.DevelopTransition.Read(Demo.Bytes($"shapes/{demo}.json")).Value).Value;
        return [.. KitFiles.Of(new KitRequest(made.Kit, demo, new(made.Kit.Title, "Q-9"), Materials.Find("DC01")!)).Select(f => f.FileName)];
    }

    [Fact]
    public void A_cut_tube_prints_its_papers_and_buys_no_sheet()
    {
        var files = Files("tube-saddle");
        Assert.Contains("tube-saddle-branch-template-template.pdf", files);
        Assert.Contains("tube-saddle-hole-template.dxf", files);
        Assert.Contains("tube-saddle-card.pdf", files);
        Assert.DoesNotContain(files, f => f.Contains("-sheet-", StringComparison.Ordinal));
    }

    [Fact]
    public void A_duct_is_nested_on_sheet()
    {
        var files = Files("transition-duct");
        Assert.Contains("transition-duct-sheet-1.dxf", files);
        Assert.Contains("transition-duct-blank-template.pdf", files);
        Assert.Contains("transition-duct-shape.stl", files);
    }
}
