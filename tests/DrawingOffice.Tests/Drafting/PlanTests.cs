using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.FromPlan;
using WitnessMark.DrawingOffice.Drafting.Picture;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

public sealed class PlanTests
{
    static Span Across(string from, string to) => new(from, to, new(1, 0), 0);

    static Span Up(string from, string to) => new(from, to, new(0, 1), 0);

    [Fact]
    [Truth(Grade.SecondImplementation, "the survey's own ± of centre distance and centre to edge, derived there by other formulas")]
    public void Spreads_along_the_axes_agree_with_the_survey()
    {
        var sample = Surveys.Plate(7);
        var plan = Adjust.Solve(sample);
        var known = PlanPart.Of(plan, sample, null, "C1", "C2").Knowledge;
        Assert.Equal(plan.Distance("C1", "C2")!.Value.Std, known.Std(Across("C1", "C2"))!.Value, 1e-9);
        foreach (var hole in new[] { "H1", "H2", "H3", "H4", "H5" })
            Assert.Equal(plan.Quantity(ReadingKind.CentreToEdge, hole, "E1")!.Value.Std, known.Std(Up("C1", hole))!.Value, 1e-9);
        Assert.Equal(0, known.Std(Up("C1", "C2"))!.Value, 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "the stated ± is the scatter of repeated surveys: 200 simulated, so the scatter itself is known to 5 % (1/√(2·200))")]
    public void Spreads_along_the_axes_are_the_scatter_of_repeated_surveys()
    {
        var runs = Enumerable.Range(1, 200).Select(i =>
        {
            var sample = Surveys.Plate((ulong)i);
            return PlanPart.Of(Adjust.Solve(sample, searchMirrors: false), sample, null, "C1", "C2");
        }).ToList();
        foreach (var id in new[] { "H2", "H3", "H4" })
        {
            var x = runs.Select(r => r.Part.Holes.Single(h => h.Id == id).Centre.X).ToList();
            var mean = x.Average();
            var scatter = Math.Sqrt(x.Sum(v => (v - mean) * (v - mean)) / (x.Count - 1));
            // Three of those 5 %; rounding to 0.01 mm adds under 2 %.
            Assert.InRange(scatter / runs[0].Knowledge.Std(Across("C1", id))!.Value, 0.85, 1.17);
        }
    }

    [Fact]
    public void A_drawing_from_a_survey_dimensions_the_adjusted_plan()
    {
        var sample = Surveys.Plate(3, gross: 0.6);
        var plan = Adjust.Solve(sample);
        var made = PlanPart.Of(plan, sample);
        Assert.Contains("reading 18", Assert.Single(made.Cautions), StringComparison.Ordinal);
        var drawing = DetailDrawing.Draw(made.Part, Parts.Title("Guard plate"), new() { Knowledge = made.Knowledge });
        // Up from C1 along C1 to C2, a hole stands as far as its centre from that edge.
        foreach (var hole in drawing.Holes.Where(h => h.Id is "H3" or "H4"))
        {
            var up = drawing.Dimensions.Single(d => d.Kind == DimensionKind.Up && d.What.EndsWith($"to {hole.Letter}", StringComparison.Ordinal));
            var edge = plan.Believed.Quantity(ReadingKind.CentreToEdge, hole.Id, "E1")!.Value;
            Assert.Equal(edge.Value, up.Value, 1e-9);
            Assert.Equal(edge.Std, up.Std!.Value, 1e-9);
        }
    }

    [Fact]
    public void What_is_loose_is_said_on_the_drawing()
    {
        var sample = Surveys.Plate(4, loose: true);
        var made = PlanPart.Of(Adjust.Solve(sample), sample);
        Assert.Contains(made.Cautions, c => c.Contains("H5", StringComparison.Ordinal));
        Assert.Null(made.Knowledge.Std(Across("C1", "H5")));
    }

    [Fact]
    public void An_open_outline_is_refused_by_the_corner_where_it_stops()
    {
        var sample = Surveys.Plate(5);
        var open = sample with { Features = [.. sample.Features.Where(f => f.Id != "E3")] };
        var refused = Assert.Throws<RefusedException>(() => PlanPart.Of(Adjust.Solve(open), open));
        Assert.Contains("corner C", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    [Truth(Grade.FromMemory, "chi-square with 2 degrees of freedom, 0.95: 5.991")]
    public void The_picture_says_how_much_its_ellipses_are_enlarged()
    {
        Assert.Equal(5.991, PlanPicture.Holds95 * PlanPicture.Holds95, 5e-4);
        var sample = Surveys.Plate(3);
        var plan = Adjust.Solve(sample);
        var sheet = PlanPicture.Draw(plan, sample);
        var words = Sheets.Texts(sheet).Single(t => t.Text.StartsWith("Ellipses", StringComparison.Ordinal)).Text;
        var factor = double.Parse(words.Split("drawn ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        var hole = sheet.Marks.OfType<CircleMark>().Single(c => c.Radius == sheet.Marks.OfType<CircleMark>().Max(m => m.Radius));
        var scale = hole.Radius / (plan.Of("H3").Size!.Value.Value / 2);
        var ellipse = sheet.Marks.OfType<EllipseMark>().Single(e => e.Centre == hole.Centre);
        Assert.Equal(plan.Of("H3").Ellipse.Major * PlanPicture.Holds95 * scale * factor, ellipse.HalfA, 1e-9);
        var bar = sheet.Marks.OfType<LineMark>().Single(l => l is { Layer: Layers.Frame, Stroke: Stroke.Outline });
        var length = double.Parse(Sheets.Texts(sheet).Single(t => t.Text.EndsWith(" mm", StringComparison.Ordinal)).Text.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(length * scale, bar.A.DistanceTo(bar.B), 1e-9);
    }

    [Fact]
    public void Doubtful_and_loose_are_marked_and_nothing_overlaps()
    {
        foreach (var sample in new[] { Surveys.Plate(3, gross: 0.6), Surveys.Plate(4, loose: true), Surveys.Plate(9, gross: -0.4) })
        {
            var plan = Adjust.Solve(sample);
            var sheet = PlanPicture.Draw(plan, sample);
            Assert.Null(Sheets.Overlap(sheet));
            Assert.Null(Sheets.OffPaper(sheet));
            foreach (var index in plan.Doubts.Indices) Assert.Single(Sheets.Texts(sheet), t => t.Text == $"{index + 1}?");
            Assert.Equal(plan.LooseFreedoms > 0, sheet.Marks.OfType<PathMark>().Any(p => p is { Filled: true, Tone: Tone.Warn }) && plan.Doubts.Indices.Length == 0);
        }
    }
}
