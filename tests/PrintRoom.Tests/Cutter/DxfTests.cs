using System.Text.Json;
using CsCheck;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Cutter;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests.Cutter;

[Truth(Grade.SecondImplementation, "npm dxf-parser 1.1.2, a general DXF reader")]
public class DxfTests
{
    static List<JsonElement> Entities(JsonElement dxf, string type, string? layer = null) =>
        [.. dxf.GetProperty("entities").EnumerateArray().Where(e => e.GetProperty("type").GetString() == type && (layer is null || e.GetProperty("layer").GetString() == layer))];

    static Vec2 Point(JsonElement at) => new(at.GetProperty("x").GetDouble(), at.GetProperty("y").GetDouble());

    static double Number(JsonElement of, string name) => of.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble() : 0;

    [Fact]
    public void The_plate_comes_back_with_its_layers_and_its_counts()
    {
        var dxf = Outside.Dxf(Dxf.Write(Examples.Plate));
        var layers = dxf.GetProperty("tables").GetProperty("layer").GetProperty("layers").EnumerateObject().Select(l => l.Name);
        Assert.Equal(["BENDS", "HOLES", "OUTLINE", "TEXT"], layers.Order());
        Assert.Equal(5, dxf.GetProperty("entities").GetArrayLength());
        Assert.Single(Entities(dxf, "POLYLINE", "OUTLINE"));
        Assert.Equal(2, Entities(dxf, "CIRCLE", "HOLES").Count);
        Assert.Single(Entities(dxf, "LINE", "BENDS"));
        Assert.Equal(4, dxf.GetProperty("header").GetProperty("$INSUNITS").GetInt32());
        Assert.Equal(140, Point(dxf.GetProperty("header").GetProperty("$EXTMAX")).X);
        Assert.Equal(new Vec2(20, 20), Point(dxf.GetProperty("header").GetProperty("$EXTMIN")));
    }

    [Fact]
    public void Loose_lines_and_arcs_that_close_up_become_one_profile_of_the_right_area_and_length()
    {
        var profile = Assert.Single(Entities(Outside.Dxf(Dxf.Write(Examples.Plate)), "POLYLINE"));
        Assert.True(profile.GetProperty("shape").GetBoolean());
        var (area, length) = Measured(profile);
        Assert.Equal(120 * 80 - (4 - Math.PI) * 100, Math.Abs(area), 1e-3);
        Assert.Equal(2 * (100 + 60) + 2 * Math.PI * 10, length, 1e-4);
    }

    /// <summary>A bulge is the tangent of a quarter of the sweep: chord c, sweep 4 atan b, radius c / (2 sin(sweep/2)).</summary>
    static (double Area, double Length) Measured(JsonElement polyline)
    {
        var corners = polyline.GetProperty("vertices").EnumerateArray().Select(v => (At: Point(v), Bulge: Number(v, "bulge"))).ToList();
        var (area, length) = (0.0, 0.0);
        for (var i = 0; i < corners.Count; i++)
        {
            var (from, to) = (corners[i].At, corners[(i + 1) % corners.Count].At);
            var (chord, sweep) = (from.DistanceTo(to), 4 * Math.Atan(corners[i].Bulge));
            var radius = sweep == 0 ? 0 : chord / (2 * Math.Sin(sweep / 2));
            area += from.Cross(to) / 2 + radius * radius * (sweep - Math.Sin(sweep)) / 2;
            length += sweep == 0 ? chord : Math.Abs(radius * sweep);
        }
        return (area, length);
    }

    [Fact]
    public void Every_kind_of_mark_is_read_where_it_was_drawn()
    {
        var dxf = Outside.Dxf(Dxf.Write(Examples.Every));
        var line = Assert.Single(Entities(dxf, "LINE")).GetProperty("vertices");
        Assert.Equal((new Vec2(20, 20), new Vec2(120, 20)), (Point(line[0]), Point(line[1])));
        var circle = Assert.Single(Entities(dxf, "CIRCLE"));
        Assert.Equal((new Vec2(60, 100), 12.5), (Point(circle.GetProperty("center")), Number(circle, "radius")));
        var arc = Assert.Single(Entities(dxf, "ARC"));
        Assert.Equal((0.5, 2.5), (Math.Round(Number(arc, "startAngle"), 6), Math.Round(Number(arc, "endAngle"), 6)));
        Assert.Single(Entities(dxf, "SOLID", "DIMENSIONS"));
        var ellipse = Assert.Single(Entities(dxf, "POLYLINE", "CENTRE"));
        Assert.Equal(Math.PI * 8 * 3, Math.Abs(Measured(ellipse).Area), 0.1);
        Assert.Equal("CHAIN", ellipse.GetProperty("lineType").GetString());
    }

    [Fact]
    public void A_clockwise_arc_is_written_anticlockwise() =>
        Gen.Select(Gen.Double[-6, 6], Gen.Double[0.1, 6], Gen.Bool).Array[30].Sample(arcs =>
        {
            var marks = arcs.Select((a, i) => new ArcMark(new(100 * i, 0), 10, a.Item1, a.Item3 ? a.Item2 : -a.Item2, "ARCS", Stroke.Thin)).ToList();
            var read = Entities(Outside.Dxf(Dxf.Write(new("arcs", 10, 10, [.. marks]))), "ARC");
            Assert.All(marks.Zip(read), m =>
            {
                var (from, to) = (Number(m.Second, "startAngle"), Number(m.Second, "endAngle"));
                var middle = from + (to > from ? to - from : to - from + 2 * Math.PI) / 2;
                var wanted = m.First.Start + m.First.Sweep / 2;
                Assert.Equal(1, Math.Cos(middle - wanted), 1e-9);
            });
        }, iter: 2);

    [Fact]
    public void Words_stay_text_with_their_height_and_place()
    {
        var text = Assert.Single(Entities(Outside.Dxf(Dxf.Write(Examples.Plate)), "TEXT", "TEXT"));
        Assert.Equal(@"%%c8 %%p0.1, 90%%d \U+00E9 \U+03A9 100%%%%", text.GetProperty("text").GetString());
        Assert.Equal(5, Number(text, "textHeight"));
        Assert.Equal(new Vec2(80, 120), Point(text.GetProperty("endPoint")));
    }

    [Theory, InlineData("4 × ⌀8", "4 x %%c8"), InlineData("3 5⁄16″", "3 5/16\""), InlineData("3½″", "3 1/2\""), InlineData("½", "1/2"), InlineData("2–3 mm", "2-3 mm")]
    public void Signs_that_ascii_has_are_plain(string words, string plain)
    {
        var sheet = new Sheet("signs", 100, 50, [new TextMark(new(5, 5), words, 3.5, "TEXT")]);
        Assert.Equal(plain, Assert.Single(Entities(Outside.Dxf(Dxf.Write(sheet)), "TEXT")).GetProperty("text").GetString());
    }

    [Fact]
    public void Whatever_the_words_the_file_stays_pairs_of_lines_in_ascii() =>
        Gen.Select(Gen.String, Gen.String, Gen.Bool).Sample((layer, words, strokes) =>
        {
            var lines = Dxf.Write(new(words, 100, 50, [new TextMark(new(5, 5), words, 3.5, layer)]), new(strokes)).Split("\r\n");
            Assert.All(lines.SkipLast(1).Where((_, i) => i % 2 == 0), code => Assert.True(int.TryParse(code, out _), code));
            Assert.Equal(["0", "EOF", ""], lines[^3..]);
            Assert.All(lines, line => Assert.True(System.Text.Ascii.IsValid(line)));
        });

    [Fact]
    public void Lettering_can_be_engraved()
    {
        var sheet = new Sheet("tag", 50, 20, [new TextMark(new(5, 5), "HL 7", 8, "ENGRAVE")]);
        var dxf = Outside.Dxf(Dxf.Write(sheet, new(LetteringAsStrokes: true)));
        Assert.Empty(Entities(dxf, "TEXT"));
        // Three strokes for H, one each for L and 7.
        Assert.Equal(5, Entities(dxf, "POLYLINE", "ENGRAVE").Count);
    }

    [Fact]
    public void Three_ends_at_one_corner_are_left_as_lines()
    {
        Vec2[] corners = [new(0, 0), new(10, 0), new(0, 10)];
        var lines = corners.Select((c, i) => new LineMark(c, corners[(i + 1) % 3], "A", Stroke.Outline)).Append(new(new(0, 0), new(-5, -5), "A", Stroke.Outline));
        var dxf = Outside.Dxf(Dxf.Write(new("fork", 20, 20, [.. lines])));
        Assert.Equal(4, Entities(dxf, "LINE").Count);
    }

    [Fact]
    public void Any_loop_of_pieces_either_way_round_is_closed_again() =>
        Gen.Select(Gen.Double[2, 5].Array[3, 8], Gen.Int[0, 3].Array[8], Gen.Int).Array[40].Sample(loops =>
        {
            var drawn = loops.Select((l, i) => Loop($"L{i}", l.Item1, l.Item2, l.Item3)).ToList();
            var dxf = Outside.Dxf(Dxf.Write(new("loops", 20, 20, [.. drawn.SelectMany(l => l)])));
            Assert.Equal(loops.Length, dxf.GetProperty("entities").GetArrayLength());
            foreach (var sides in drawn)
                Assert.Equal(sides.Sum(Shapes.Drawn.Length), Measured(Assert.Single(Entities(dxf, "POLYLINE", sides[0].Layer))).Length, 1e-4);
        }, iter: 2);

    static List<Mark> Loop(string layer, double[] radii, int[] kinds, int shuffle)
    {
        var corners = radii.Select((r, i) => Vec2.Polar(2 * Math.PI * i / radii.Length, r)).ToList();
        var sides = corners.Select((c, i) => Piece(c, corners[(i + 1) % corners.Count], kinds[i], layer));
        return [.. sides.Select((side, i) => (side, Key: (i + 1) * 7919 ^ shuffle)).OrderBy(s => s.Key & 0xFF).Select(s => s.side)];
    }

    /// <summary>A straight side or a half circle between two corners, from either end.</summary>
    static Mark Piece(Vec2 a, Vec2 b, int kind, string layer) => kind switch
    {
        0 => new LineMark(a, b, layer, Stroke.Outline),
        1 => new LineMark(b, a, layer, Stroke.Outline),
        2 => new ArcMark((a + b) / 2, a.DistanceTo(b) / 2, (a - b).Angle, Math.PI, layer, Stroke.Outline),
        _ => new ArcMark((a + b) / 2, a.DistanceTo(b) / 2, (b - a).Angle, -Math.PI, layer, Stroke.Outline),
    };
}
