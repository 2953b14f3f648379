using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.FromPlan;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

/// <summary>Places that share a dimension, and what the tables say of them.</summary>
public sealed class SharingTests
{
    /// <summary>A plate 100 × 60; hole H2 stands over H1, farther out by what is given.</summary>
    static FlatPart Plate(double apart) => new([Parts.Polygon(new(0, 0), new(100, 0), new(100, 60), new(0, 60))])
    {
        Datum = new(Vec2.Zero, "C1"),
        Holes = [new("H1", new(30, 20), new(8)), new("H2", new(30 + apart, 40), new(8))],
    };

    static List<DimensionItem> Across(FlatPart part, Knowledge knowledge) =>
        [.. DetailDrawing.Draw(part, Parts.Title("Shared"), new() { Knowledge = knowledge }).Dimensions.Where(d => d.Kind == DimensionKind.Across)];

    static Knowledge Spread(double std) => new() { Std = s => s.From == "C1" && s.To == "H2" ? 2 * std : std };

    [Fact]
    public void What_the_survey_cannot_tell_apart_has_one_dimension_of_the_surer_value_and_the_larger_spread()
    {
        var shared = Across(Plate(0.2), Spread(0.1));
        Assert.Equal(["across, C1, C4 to A, B", "across, over all"], shared.Select(d => d.What));
        Assert.Equal(30, shared[0].Value, 1e-12);
        Assert.Equal(0.2, shared[0].Std!.Value, 1e-12);
    }

    [Fact]
    public void What_the_survey_tells_apart_has_two() => Assert.Equal(3, Across(Plate(0.2), Spread(0.01)).Count);

    [Fact]
    public void Different_made_to_sizes_part_and_equal_ones_join_what_the_spread_alone_would_not()
    {
        string? Made(Span s, string second) => s.To switch { "H1" => "1 3/16 in", "H2" => second, _ => null };
        Assert.Equal(3, Across(Plate(0.2), Spread(0.1) with { MadeTo = s => Made(s, "1 13/64 in") }).Count);
        var joined = Across(Plate(0.2), Spread(0.01) with { MadeTo = s => Made(s, "1 3/16 in") });
        Assert.Equal("1 3/16 in", joined[0].Text);
        Assert.Equal(2, joined.Count);
    }

    [Fact]
    public void A_place_within_its_spread_of_the_datum_has_no_dimension_and_a_hole_there_no_brackets()
    {
        var part = Plate(0) with { Holes = [new("H1", new(0.12, 30), new(8)), new("H2", new(60, 30), new(8))] };
        var drawing = DetailDrawing.Draw(part, Parts.Title("Datum"), new() { Knowledge = new() { Std = _ => 0.08 } });
        Assert.Equal([60, 100], drawing.Dimensions.Where(d => d.Kind == DimensionKind.Across).Select(d => d.Value));
        var texts = drawing.Sheets.SelectMany(Sheets.Texts).Select(t => t.Text).ToList();
        Assert.Contains("0.12", texts);
        Assert.Contains("(60.00)", texts);
    }

    [Fact]
    [Truth(Grade.Property, "simulated square plates: at most 1 in 20 shows a row that is not there, as stated")]
    public void A_square_plate_is_seldom_dimensioned_twice()
    {
        var parted = 0;
        const int runs = 120;
        for (ulong seed = 1; seed <= runs; seed++)
        {
            var sample = Surveys.Plate(seed);
            var made = PlanPart.Of(Adjust.Solve(sample, searchMirrors: false), sample);
            // Square with one another on the true plate: C1 with C5 across, C2 with C3 across.
            var across = Across(made.Part, made.Knowledge).Select(d => d.What).ToList();
            if (!across.Exists(w => w.StartsWith("across, C1, C5", StringComparison.Ordinal)) || across.Exists(w => w.EndsWith("to C2", StringComparison.Ordinal) || w.EndsWith("to C3", StringComparison.Ordinal))) parted++;
        }
        // Binomial: 0.05 and three of its standard deviations, √(0.05 · 0.95 / 120) = 0.02.
        Assert.InRange((double)parted / runs, 0, 0.11);
    }

    [Fact]
    public void One_view_has_one_style()
    {
        // Eight places across ask for a running line; three up would have had lines of their own.
        var part = new FlatPart([Parts.Polygon(new(0, 0), new(200, 0), new(200, 60), new(0, 60))])
        {
            Datum = new(Vec2.Zero, "C1"),
            Holes = [.. Enumerable.Range(1, 7).Select(i => new RoundHole($"H{i}", new(25 * i, i % 2 == 0 ? 20 : 40), new(6)))],
        };
        var zeros = Sheets.Texts(DetailDrawing.Draw(part, Parts.Title("Style")).Sheets[0]).Count(t => t.Text == "0");
        Assert.Equal(2, zeros);
    }

    [Fact]
    public void Designed_sizes_are_not_called_measured()
    {
        var texts = Words(Parts.Blank with { Designed = true, Holes = [new("H1", new(45, 9), new(6.4))] });
        Assert.Contains("size", texts);
        Assert.DoesNotContain(texts, t => t == "measured" || t.Contains('±'));
        Assert.Contains("measured", Words(Parts.Blank));

        static List<string> Words(FlatPart part) => [.. DetailDrawing.Draw(part, Parts.Title("Blank")).Sheets.SelectMany(Sheets.Texts).Select(t => t.Text)];
    }

    [Fact]
    [Truth(Grade.CommonPractice, "notes that stand side by side without a gap read as one")]
    public void Notes_on_one_line_stand_three_letter_heights_apart()
    {
        FlatPart[] four = [Plate(15) with { Holes = [.. Plate(15).Holes, new("H3", new(70, 20), new(8)), new("H4", new(70, 40), new(8))] }];
        foreach (var part in four.Concat([Parts.Bracket, Parts.Blank]).Concat(Enumerable.Range(1, 150).Select(seed => Sheets.Invented((uint)seed * 104729))))
            Assert.Null(Sheets.RunTogether(DetailDrawing.Draw(part, Parts.Title("Notes")).Sheets[0]));
    }
}
