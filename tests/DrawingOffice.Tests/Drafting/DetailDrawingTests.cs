using System.Globalization;
using CsCheck;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

public sealed class DetailDrawingTests
{
    static DetailDrawing Draw(FlatPart part, DrawingOptions? options = null) => DetailDrawing.Draw(part, Parts.Title("Trial"), options);

    [Fact]
    [Truth(Grade.Property, "no two letterings may lie on one another, nor a figure on the outline, nor anything off the paper")]
    public void Nothing_overlaps_on_parts_nobody_chose() => Gen.UInt.Sample(
        seed =>
        {
            foreach (var sheet in Draw(Sheets.Invented(seed)).Sheets)
            {
                Assert.Null(Sheets.Overlap(sheet));
                Assert.Null(Sheets.OnOutline(sheet));
                Assert.Null(Sheets.OffPaper(sheet));
            }
        },
        iter: 200);

    [Fact]
    [Truth(Grade.Property, "no line runs through a figure; on 2 parts in 2500 like these a leader finds no other way (measured), none of them among these seeds")]
    public void No_line_strikes_a_figure_out()
    {
        for (uint seed = 1; seed <= 150; seed++)
            foreach (var sheet in Draw(Sheets.Invented(seed * 7919)).Sheets) Assert.Null(Sheets.Struck(sheet));
    }

    [Fact]
    [Truth(Grade.Property, "the figure of a dimension is the distance on the part")]
    public void Every_figure_is_the_distance_it_spans() => Gen.UInt.Sample(
        seed =>
        {
            foreach (var d in Draw(Sheets.Invented(seed)).Dimensions)
            {
                var spanned = d.Kind switch
                {
                    DimensionKind.Across => Math.Abs(d.B.X - d.A.X),
                    DimensionKind.Up => Math.Abs(d.B.Y - d.A.Y),
                    DimensionKind.Angle => d.Value,
                    _ => d.A.DistanceTo(d.B),
                };
                Assert.Equal(spanned, d.Value, 1e-9);
                var written = double.Parse(d.Text.Split(' ')[^1].Trim('(', ')', 'R', '⌀', '°'), CultureInfo.InvariantCulture);
                Assert.Equal(d.Kind == DimensionKind.Angle ? d.Value * 180 / Math.PI : d.Value, written, d.Kind == DimensionKind.Angle ? 0.051 : 0.0051);
            }
        },
        iter: 100);

    [Fact]
    [Truth(Grade.Property, "each hole and slot once, under a letter of its own")]
    public void Every_hole_stands_in_the_table_once() => Gen.UInt.Sample(
        seed =>
        {
            var part = Sheets.Invented(seed);
            var drawing = Draw(part);
            var ids = part.Holes.Select(h => h.Id).Concat(part.Slots.Select(s => s.Id)).ToList();
            Assert.Equal(ids.Order(), drawing.Holes.Select(h => h.Id).Order());
            Assert.Equal(ids.Count, drawing.Holes.Select(h => h.Letter).Distinct().Count());
            foreach (var id in ids) Assert.Single(drawing.Sheets.SelectMany(Sheets.Texts), t => t.Text == id);
        },
        iter: 100);

    [Fact]
    [Truth(Grade.Property, "every corner and hole can be found from the dimensions: their stations are all dimensioned or in the table")]
    public void Positions_from_the_datum_add_up_to_the_part()
    {
        var drawing = Draw(Parts.EightHoles);
        double[] across = [13, 34.2, 44, 62.1, 65, 71, 113, 115, 161, 187, 195];
        Assert.Equal(across, drawing.Dimensions.Where(d => d.Kind == DimensionKind.Across).Select(d => Math.Round(d.Value, 6)));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "a short row may be chained; the closing link follows from the others and stands in brackets")]
    public void Two_or_three_are_chained_and_the_last_link_is_auxiliary()
    {
        var part = new FlatPart([Parts.Polygon(new(0, 0), new(100, 0), new(100, 60), new(0, 60))]) { Holes = [new("H", new(30, 20), new(10))] };
        var across = Draw(part).Dimensions.Where(d => d.Kind == DimensionKind.Across).ToList();
        Assert.Equal(["30", "(70)", "100"], across.Select(d => d.Text));
        Assert.Equal([false, true, false], across.Select(d => d.Auxiliary));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "from one datum errors do not add up")]
    public void A_named_datum_dimensions_all_from_it()
    {
        var part = new FlatPart([Parts.Polygon(new(0, 0), new(100, 0), new(100, 60), new(0, 60))]) { Holes = [new("H", new(30, 20), new(10))], Datum = new(Vec2.Zero, "C1") };
        var across = Draw(part).Dimensions.Where(d => d.Kind == DimensionKind.Across);
        Assert.Equal(["30", "100"], across.Select(d => d.Text));
        Assert.All(across, d => Assert.Equal(0, d.A.X));
    }

    [Fact]
    [Truth(Grade.Property, "a mm of the part is scale × 1 mm on paper")]
    public void The_outline_is_drawn_to_the_scale_in_the_title_block()
    {
        foreach (var part in new[] { Parts.Bracket, Parts.EightHoles, new FlatPart([Parts.Polygon(new(0, 0), new(900, 0), new(900, 500), new(0, 500))]) })
        {
            var drawing = Draw(part);
            var lines = drawing.Sheets[0].Marks.OfType<LineMark>().Where(m => m.Layer == Layers.Outline).ToList();
            var longest = part.Loops[0].OfType<LineSegment>().Max(s => s.From.DistanceTo(s.To));
            Assert.Equal(longest * drawing.Scale.Factor, lines.Max(l => l.A.DistanceTo(l.B)), 1e-9);
            Assert.Contains(Sheets.Texts(drawing.Sheets[0]), t => t.Text == drawing.Scale.ToString());
        }
    }

    [Fact]
    public void The_made_to_size_leads_and_the_measured_value_stands_beside_it()
    {
        var known = new Knowledge { MadeTo = s => s.Value > 119 ? "4 3/4 in" : null, Std = _ => 0.02 };
        var drawing = Draw(Parts.Bracket, new() { Knowledge = known });
        var over = drawing.Dimensions.Single(d => d.MadeTo is not null);
        Assert.Equal("4 3/4 in", over.Text);
        var texts = drawing.Sheets.SelectMany(Sheets.Texts).Select(t => t.Text).ToList();
        Assert.Equal(2, texts.Count(t => t == "4 3/4 in"));
        Assert.Contains("120.00", texts);
    }

    [Fact]
    public void Too_many_corners_are_not_passed_over_in_silence()
    {
        var saw = Enumerable.Range(0, 60).Select(i => new Vec2(i * 3, i % 2 * 4)).Append(new(177, 40)).Append(new(0, 40)).ToArray();
        var drawing = Draw(new([Parts.Polygon(saw)]));
        Assert.Contains("template", Assert.Single(drawing.Cautions), StringComparison.Ordinal);
        Assert.Contains(drawing.Sheets.SelectMany(Sheets.Texts), t => t.Text.StartsWith("More than", StringComparison.Ordinal));
    }

    [Fact]
    public void A_perforated_plate_is_drawn_without_letters_and_says_so()
    {
        var holes = Enumerable.Range(0, 400).Select(i => new RoundHole($"P{i}", new(10 + 14.7 * (i % 20), 10 + 9.4 * (i / 20)), new(7)));
        var drawing = Draw(new([Parts.Polygon(new(0, 0), new(300, 0), new(300, 200), new(0, 200))]) { Holes = [.. holes] });
        Assert.Contains("letters", Assert.Single(drawing.Cautions), StringComparison.Ordinal);
        Assert.Equal(400, drawing.Holes.Length);
        Assert.Single(drawing.Sheets.SelectMany(Sheets.Texts), t => t.Text == "P399");
        foreach (var sheet in drawing.Sheets) Assert.Null(Sheets.OffPaper(sheet));
    }

    [Fact]
    public void Inches_are_written_when_the_shop_wants_them()
    {
        var inch = new Writing((mm, _) => (mm / 25.4).ToString("0.000", CultureInfo.InvariantCulture), mm => (mm / 25.4).ToString("0.0000", CultureInfo.InvariantCulture), "inch");
        var part = new FlatPart([Parts.Polygon(new(0, 0), new(101.6, 0), new(101.6, 50.8), new(0, 50.8))]);
        Assert.Equal(["4.000", "2.000"], Draw(part, new() { Writing = inch }).Dimensions.Select(d => d.Text));
    }

    [Fact]
    public void A_part_that_fits_no_sheet_at_the_asked_scale_is_refused()
    {
        var part = new FlatPart([Parts.Polygon(new(0, 0), new(900, 0), new(900, 500), new(0, 500))]);
        var refused = Assert.Throws<RefusedException>(() => Draw(part, new() { Scale = DrawingScale.Full, Papers = [PaperSize.A4] }));
        Assert.Contains("1:1", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bad_part_is_refused_in_a_sentence_that_names_it()
    {
        var square = Parts.Polygon(new(0, 0), new(10, 0), new(10, 10), new(0, 10));
        Refused("outline", new([]));
        Refused("outline", new([[new LineSegment(new(0, 0), new(10, 0)), new LineSegment(new(11, 0), new(0, 0))]]));
        Refused("outline", new([Parts.Polygon(new(0, 0), new(double.NaN, 0), new(5, 5))]));
        Refused("outline", new([Parts.Polygon(new(0, 0), new(10, 0))]));
        Refused("hole H1", new([square]) { Holes = [new("H1", new(5, 5), new(-2))] });
        Refused("slot S1", new([square]) { Slots = [new("S1", new(5, 5), 0, new(double.NaN), new(3))] });
        Refused("arc", new([[new ArcSegment(new(10, 0), new(0, 10), Vec2.Zero, 1), new LineSegment(new(0, 10), new(10, 0))]]));

        static void Refused(string names, FlatPart part) => Assert.Contains(names, Assert.Throws<RefusedException>(() => Draw(part)).Message, StringComparison.Ordinal);
    }
}
