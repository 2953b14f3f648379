using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CsCheck;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Screen;
using WitnessMark.PrintRoom.Shapes;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests.Screen;

public class SvgTests
{
    static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    [Fact, Truth(Grade.Published, "W3C SVG 1.1, 7.2 and 7.10: width and height in mm with a viewBox of the same figures make one user unit one mm")]
    public void The_picture_is_in_mm_at_true_size()
    {
        var root = XElement.Parse(Svg.Write(Examples.Every));
        Assert.Equal("210mm", root.Attribute("width")!.Value);
        Assert.Equal("297mm", root.Attribute("height")!.Value);
        Assert.Equal("0 0 210 297", root.Attribute("viewBox")!.Value);
        var hole = root.Descendants(s_svg + "circle").First();
        Assert.Equal(["60", "197", "12.5"], new[] { "cx", "cy", "r" }.Select(a => hole.Attribute(a)!.Value));
    }

    [Fact, Truth(Grade.Property, "the sheet's own layers")]
    public void Layers_are_kept_apart()
    {
        var root = XElement.Parse(Svg.Write(Examples.Every));
        var layers = root.Elements(s_svg + "g").Select(g => g.Attribute("data-layer")!.Value);
        Assert.Equal(Examples.Every.Marks.Select(m => m.Layer).Distinct(), layers);
        Assert.All(root.Elements(s_svg + "g").SelectMany(g => g.Elements()), e => Assert.NotNull(e.Attribute("class")));
    }

    [Fact, Truth(Grade.Published, "W3C SVG 1.1, F.6.5: an elliptical arc's centre from its end points and flags")]
    public void An_arc_has_the_centre_and_the_way_round_of_its_mark() =>
        Gen.Select(Gen.Double[-6, 6], Gen.Double[0.05, 6.2], Gen.Bool, Gen.Double[1, 90]).Sample((start, sweep, left, radius) =>
        {
            var arc = new ArcMark(new(100, 80), radius, start, left ? sweep : -sweep, Layers.Outline, Stroke.Outline);
            var path = XElement.Parse(Svg.Write(new("arc", 210, 297, [arc]))).Descendants(s_svg + "path").Single().Attribute("d")!.Value;
            var n = path.Split([' ', 'M', 'A'], StringSplitOptions.RemoveEmptyEntries).Select(w => double.Parse(w, CultureInfo.InvariantCulture)).ToArray();
            var centre = CentreByTheStandard(new(n[0], n[1]), new(n[7], n[8]), n[2], n[5] != 0, n[6] != 0);
            // Ends are written to 0.001 mm; near a half turn the centre moves by the root of that.
            var slack = 0.002 + 3 * Math.Sqrt(0.001 * radius) * (Math.Abs(sweep - Math.PI) < 0.3 || sweep < 0.3 || sweep > 5.9 ? 1 : 0.03);
            Assert.True(centre.DistanceTo(new(100, 297 - 80)) < slack, $"centre {centre}, {arc}");
        });

    static Vec2 CentreByTheStandard(Vec2 from, Vec2 to, double r, bool large, bool positive)
    {
        var half = (from - to) / 2;
        var rest = Math.Max(0, (r * r - half.Dot(half)) / half.Dot(half));
        var sign = large != positive ? 1 : -1;
        return sign * Math.Sqrt(rest) * new Vec2(half.Y, -half.X) + (from + to) / 2;
    }

    [Fact, Truth(Grade.SecondImplementation, ".NET's XML reader")]
    public void Whatever_the_words_it_is_well_formed() =>
        Gen.Select(Gen.String, Gen.String, Gen.Bool).Sample((title, words, real) =>
        {
            var sheet = new Sheet(title, 100, 50, [new TextMark(new(5, 5), words, 3.5, title)]);
            var root = XElement.Parse(Svg.Write(sheet, new(RealText: real)));
            Assert.Equal("svg", root.Name.LocalName);
        });

    [Fact, Truth(Grade.Property, "markup in words stays words")]
    public void Words_cannot_become_markup()
    {
        var sheet = new Sheet("\"><script>", 100, 50, [new TextMark(new(5, 5), "</text><script>alert(1)</script>", 3.5, "\"onload=\"x")]);
        var root = XElement.Parse(Svg.Write(sheet, new(RealText: true)));
        Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName == "script");
        Assert.Equal("</text><script>alert(1)</script>", root.Descendants(s_svg + "text").Single().Value);
    }

    [Fact, Truth(Grade.Property, "the picture's letters are the lettering's strokes")]
    public void Letters_end_where_the_strokes_end()
    {
        var text = new TextMark(new(60, 30), "Rg ⌀8 3 5⁄16″ é", 7, Layers.Text, Anchor.Middle, 0.7);
        var path = XElement.Parse(Svg.Write(new("t", 100, 50, [text]))).Descendants(s_svg + "path").Single().Attribute("d")!.Value;
        var start = Lettering.Start(text);
        var drawn = Ends(path).Select(p => start + 0.7 * new Vec2(p.X, -p.Y).Turned(0.7)).ToList();
        var strokes = Curves.Of(text);
        Assert.Equal(strokes.Length, drawn.Count);
        Assert.All(strokes.Zip(drawn), p => Assert.True(p.First.Pieces[^1].End.DistanceTo(p.Second) < 0.005));
    }

    /// <summary>Where each stroke ends, by walking the moves M, m, l and c.</summary>
    static List<Vec2> Ends(string path)
    {
        var (ends, at, drawing) = (new List<Vec2>(), Vec2.Zero, false);
        foreach (Match move in Regex.Matches(path, "([Mmlc])([^Mmlc]*)"))
        {
            var n = move.Groups[2].Value.Split(' ').Select(w => double.Parse(w, CultureInfo.InvariantCulture)).ToArray();
            if (drawing && move.Groups[1].Value is ("M" or "m")) ends.Add(at);
            drawing = move.Groups[1].Value is "l" or "c";
            at = new Vec2(n[^2], n[^1]) + (move.Groups[1].Value == "M" ? Vec2.Zero : at);
        }
        return [.. ends, at];
    }

    [Fact, Truth(Grade.Property, "lettering and real text fill the same length")]
    public void Real_text_lies_over_the_lettering()
    {
        var text = new TextMark(new(20, 30), "⌀12.7 ±0.05", 3.5, Layers.Text);
        var real = XElement.Parse(Svg.Write(new("t", 100, 50, [text]), new(RealText: true))).Descendants(s_svg + "text").Single();
        var box = Box.Of(text)!.Value;
        var length = double.Parse(real.Attribute("textLength")!.Value, CultureInfo.InvariantCulture);
        Assert.InRange(length, box.Width - 0.1 * 3.5 - 1, box.Width);
        Assert.Equal("⌀12.7 ±0.05", real.Value);
    }

    [Theory, InlineData(double.NaN), InlineData(double.PositiveInfinity), InlineData(1e9)]
    [Truth(Grade.Property, "bad input is refused in one sentence")]
    public void A_mark_that_is_no_number_is_refused(double x)
    {
        var sheet = new Sheet("bad", 100, 50, ImmutableArray.Create<Mark>(new CircleMark(new(1, 1), 2, "A", Stroke.Thin), new LineMark(new(x, 0), new(1, 1), "A", Stroke.Thin)));
        var refusal = Assert.Throws<RefusedException>(() => Svg.Write(sheet)).Message;
        Assert.Contains("mark 2", refusal);
    }
}
