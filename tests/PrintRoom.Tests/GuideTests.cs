using System.Text.RegularExpressions;
using WitnessMark.PrintRoom.Cutter;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Screen;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests;

/// <summary>What docs/guide/printing.md shows and says.</summary>
[Truth(Grade.Property, "the guide is true of the code")]
public class GuideTests
{
    [Fact]
    public void The_example_runs()
    {
        var plate = Examples.Plate;
        var picture = Svg.Write(plate);
        var paper = Pdf.Write([plate]);
        var template = Pdf.Write(Tiles.Split(plate, PaperSize.A4));
        var cutter = Dxf.Write(plate);
        var lacking = Lettering.Missing("⌀12.7 ±0.05");
        Assert.True(picture.Length > 0 && paper.Length > 0 && template.Length > 0 && cutter.Length > 0);
        Assert.Empty(lacking);
    }

    [Fact]
    public void The_example_is_the_one_that_runs()
    {
        var here = File.ReadAllText(Path.Combine(Outside.Here(), "GuideTests.cs"));
        var guide = File.ReadAllText(Path.Combine(Outside.Here(), "../../docs/guide/printing.md"));
        var example = Assert.Single(Regex.Matches(guide, "```csharp\n(.*?)```", RegexOptions.Singleline)).Groups[1].Value;
        Assert.All(example.Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.Contains(line, here));
    }

    [Fact]
    public void The_largest_margin_is_the_one_the_guide_names()
    {
        Assert.Single(Tiles.Split(Examples.Plate, PaperSize.A4, margin: 24));
        Assert.Throws<Maths.RefusedException>(() => Tiles.Split(Examples.Plate, PaperSize.A4, margin: 24.1));
    }

    [Fact, Truth(Grade.FromMemory, "ISO 128: wide to narrow 2 : 1; dash 12 d, long dash 24 d, gap 3 d, dot at most d/2; bend lines continuous narrow")]
    public void Pens_are_those_of_the_line_types()
    {
        Assert.Equal(2, Pens.Of(Stroke.Outline).Width / Pens.Of(Stroke.Centre).Width);
        Assert.Equal([12, 3], Pens.Of(Stroke.Hidden).Dashes.Select(d => d / 0.25));
        Assert.Equal([24, 3, 0.5, 3], Pens.Of(Stroke.Centre).Dashes.Select(d => d / 0.25));
        Assert.True(Pens.Of(Stroke.Fold) is { Continuous: true, Width: 0.25 });
    }
}
