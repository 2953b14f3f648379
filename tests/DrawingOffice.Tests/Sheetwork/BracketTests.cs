using CsCheck;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

public class BracketTests
{
    const string Bracket = """
        { "title": "Carrier", "thickness": 2, "measured_to": "outside",
          "faces": [
            { "name": "base", "size": [80, 50], "holes": [{ "name": "A", "at": [20, 25], "diameter": 8.5 }] },
            { "name": "back", "corners": [[0,0],[80,0],[80,30],[60,45,8],[20,45,8],[0,30]], "holes": [{ "name": "B", "at": [40, 26], "width": 6, "length": 14 }] },
            { "name": "tab", "size": [30, 22] } ],
          "bends": [
            { "parent": "base", "child": "back", "side": 3, "angle_degrees": 90, "inside_radius": 2 },
            { "parent": "base", "child": "tab", "side": 2, "from": 5, "to": 35, "angle_degrees": -90, "inside_radius": 2 } ] }
        """;

    static FaceTree Tree(string json) => BracketJson.Read(json).Value.ToFaceTree().Value;

    static double Height(Blank b) => b.Outline.Corners.Max(c => c.At.Y) - b.Outline.Corners.Min(c => c.At.Y);

    static string Strip(string measuredTo, double legA, double web, double legB, double angleB, double thickness, double radius) => $$"""
        { "thickness": {{thickness}}, "measured_to": "{{measuredTo}}", "faces": [ { "name": "web", "size": [50, {{web}}] }, { "name": "a", "size": [50, {{legA}}] }, { "name": "b", "size": [50, {{legB}}] } ],
          "bends": [ { "parent": "web", "child": "a", "side": 1, "angle_degrees": 90, "inside_radius": {{radius}} }, { "parent": "web", "child": "b", "side": 3, "angle_degrees": {{angleB}}, "inside_radius": {{radius}} } ] }
        """;

    [Theory]
    [InlineData(90)]
    [InlineData(-90)]
    [Truth(Grade.FromMemory, "flat length = outside legs less a bend deduction for each bend: channel (90, 90) and zed (90, -90)")]
    public void A_channel_and_a_zed_develop_to_the_length_worked_by_hand(double second)
    {
        foreach (BendMethod method in new BendMethod[] { new Din6935(), new HandbookRule(HandbookMetal.Medium), new NeutralAxis(0.42) })
        {
            var byHand = Section.FlatLength([25, 40, 30], [(Math.PI / 2, 2), (Math.PI / 2, 2)], 1.5, method).Value;
            Assert.Equal(byHand, Height(Develop.Blank(Tree(Strip("outside", 25, 40, 30, second, 1.5, 2)), method).Value), 1e-9);
        }
    }

    [Fact]
    [Truth(Grade.Property, "one part measured outside, inside or between tangent lines has one blank")]
    public void It_does_not_matter_to_where_the_legs_are_measured()
    {
        Gen.Select(Gen.Double[0.5, 3], Gen.Double[0.5, 5], Gen.Double[20, 90]).Sample((t, r, degrees) =>
        {
            var half = Math.Tan(degrees * Math.PI / 360);
            // Legs between tangent lines 20, 30, 25; the first bend is 90°.
            string Of(string to, double at90, double atB) => Strip(to, 20 + at90, 30 + at90 + atB, 25 + atB, degrees, t, r);
            var blanks = new[] { Of("tangent", 0, 0), Of("outside", r + t, (r + t) * half), Of("inside", r, r * half) }
                .Select(j => Height(Develop.Blank(Tree(j), new NeutralAxis(0.4)).Value)).ToList();
            Assert.Equal(blanks[0], blanks[1], 1e-9);
            Assert.Equal(blanks[0], blanks[2], 1e-9);
        });
    }

    [Fact]
    [Truth(Grade.Published, "FAA-H-8083-31, sheet metal layout, U-channel 1.00 x 2.00 x 1.00 in, 0.040 sheet, radius 0.16: setback 0.2, flats 0.8, 1.6 and 0.8 in")]
    public void A_handbooks_channel_has_its_flats()
    {
        var tree = Tree(Strip("outside", 1.00, 2.00, 1.00, 90, 0.040, 0.16));
        double Flat(string id) => tree.Faces.Single(f => f.Id == id).Outline.Corners.Max(c => c.At.Y) - tree.Faces.Single(f => f.Id == id).Outline.Corners.Min(c => c.At.Y);
        Assert.Equal(0.8, Flat("a"), 1e-12);
        Assert.Equal(1.6, Flat("web"), 1e-12);
        Assert.Equal(0.8, Flat("b"), 1e-12);
    }

    [Fact]
    public void Holes_of_a_folded_face_are_measured_from_where_its_lengths_are_measured()
    {
        var tree = Tree(Bracket);
        var b = Assert.IsType<Slot>(tree.Faces.Single(f => f.Id == "back").Openings[0]);
        // Outside, 90°: the tangent line stands in by R + T = 4.
        Assert.Equal(40, b.At.X, 1e-9);
        Assert.Equal(26 - 4, b.At.Y, 1e-9);
        Assert.Equal(46, tree.Bends.Single(x => x.Child == "back").From.Y, 1e-9);
    }

    [Fact]
    public void The_shoulders_of_a_tab_stay_where_they_were_written_and_get_reliefs()
    {
        var tree = Tree(Bracket);
        var tab = tree.Bends.Single(x => x.Child == "tab");
        Assert.Equal(76, tab.From.X, 1e-9);
        Assert.Contains(tree.Faces[0].Outline.Corners, c => c.At.DistanceTo(new(80, 0)) < 1e-9);
        var blank = Develop.Blank(tree, new Din6935()).Value;
        Assert.Contains("both ends", Assert.Single(blank.Cautions, c => c.Kind == CautionKind.ReliefDrawn).Words);
        Assert.DoesNotContain(blank.Cautions, c => c.Kind == CautionKind.BlankOverlaps);
        Assert.InRange(blank.AreaImbalance, -1e-12, 1e-12);
    }

    [Theory]
    [InlineData("\"thickness\": 2,", "", "thickness")]
    [InlineData("\"thickness\": 2,", "\"thickness\": -2,", "thickness")]
    [InlineData("\"diameter\": 8.5", "\"diameter\": 0", "diameter")]
    [InlineData("\"diameter\": 8.5", "\"diametre\": 8.5", "diametre")]
    [InlineData("\"side\": 3", "\"side\": 9", "sides 1 to 4")]
    [InlineData("\"side\": 3, \"angle_degrees\": 90", "\"side\": 3, \"angle_degrees\": 190", "180")]
    [InlineData("\"child\": \"tab\"", "\"child\": \"tabb\"", "tabb")]
    [InlineData("\"child\": \"tab\"", "\"child\": \"back\"", "one bend only")]
    [InlineData("\"parent\": \"base\", \"child\": \"tab\"", "\"parent\": \"tab\", \"child\": \"tab\"", "tab")]
    [InlineData("[60,45,8]", "[60,45,80]", "radius 80")]
    [InlineData("\"name\": \"tab\"", "\"name\": \"back\"", "used twice")]
    [InlineData("\"at\": [20, 25]", "\"at\": [79, 25]", "inside the flat")]
    [InlineData("\"size\": [30, 22]", "\"size\": [30, 3]", "too short")]
    [InlineData("] }\n", "]", "JSON")]
    [InlineData("\"outside\"", "\"middle\"", "middle")]
    public void Bad_input_gets_one_sentence_that_names_it(string good, string bad, string named)
    {
        var text = Bracket.Replace("\r", "");
        Assert.Contains(good.Trim(), text);
        var at = text.LastIndexOf(good.Trim(), StringComparison.Ordinal);
        var read = BracketJson.Read(text[..at] + bad + text[(at + good.Trim().Length)..]);
        var refusal = read.Ok ? read.Value.ToFaceTree().Refusal : read.Refusal;
        Assert.Contains(named, refusal!.Sentence);
    }

    [Fact]
    public void Lengths_may_be_written_with_their_units_and_gauges()
    {
        var read = BracketJson.Read(Bracket.Replace("\"thickness\": 2,", "\"thickness\": \"14 SWG\","));
        Assert.Equal(2.032, read.Value.Thickness, 3);
        Assert.Contains("thickness", BracketJson.Read(Bracket.Replace("\"thickness\": 2,", "\"thickness\": \"x\",")).Refusal!.Sentence);
    }

    [Fact]
    public void Sizes_beyond_any_sheet_are_refused_at_once()
    {
        foreach (var size in new[] { "1e300", "1e9", "1e-300", "5e-324" })
            foreach (var at in new[] { "80, 50", "8.5", "45,8", "thickness\": 2", "inside_radius\": 2" })
            {
                var text = Bracket.Replace(at, at[..(at.LastIndexOfAny([' ', ',']) + 1)] + size);
                Assert.NotEqual(Bracket, text);
                var read = BracketJson.Read(text);
                var tree = read.Ok ? read.Value.ToFaceTree() : read.Refusal!;
                if (tree.Ok) Assert.All(Develop.Blank(tree.Value, new NeutralAxis(0.4)).Value.Outline.Corners, c => Assert.True(double.IsFinite(c.At.X + c.At.Y + c.Bulge)));
            }
    }

    [Fact]
    public void No_text_whatever_breaks_the_reader()
    {
        Gen.Select(Gen.Int[0, Bracket.Length - 1], Gen.Int[0, 12], Gen.String[Gen.Char["{}[]:,\"0123456789.-eE abt"], 0, 6]).Sample((at, cut, put) =>
        {
            var text = Bracket[..at] + put + Bracket[Math.Min(Bracket.Length, at + cut)..];
            var read = BracketJson.Read(text);
            if (!read.Ok) return;
            var tree = read.Value.ToFaceTree();
            if (tree.Ok) Develop.Blank(tree.Value, new Din6935());
        }, iter: 4000);
    }
}
