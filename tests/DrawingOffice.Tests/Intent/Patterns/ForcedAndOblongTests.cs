using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.FromIntent;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Intent.Patterns.Words;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent.Patterns;

/// <summary>What was forced is held and told; an oblong is no pitch circle.</summary>
[Truth(Grade.Property, "holes at places set by construction, every distance between them read")]
public class ForcedAndOblongTests
{
    static readonly Vec2[] Row = [new(0, 0.04), new(24.05, -0.03), new(47.96, 0.05), new(72.03, -0.06), new(95.98, 0.02)];

    /// <summary>Holes H1 and on, the last of them a bore; the plate, if any, is as wide and high about the origin.</summary>
    static Sample Plate(Vec2[] holes, double bore = 8, Vec2? plate = null)
    {
        Vec2[] corners = plate is { } p ? [new(-p.X / 2, -p.Y / 2), new(p.X / 2, -p.Y / 2), new(p.X / 2, p.Y / 2), new(-p.X / 2, p.Y / 2)] : [];
        (string Id, FeatureKind Kind, Vec2 At)[] all =
            [.. corners.Select((c, i) => ($"C{i + 1}", FeatureKind.Point, c)), .. holes.Select((h, i) => ($"H{i + 1}", FeatureKind.Hole, h))];
        var readings = new List<Reading>();
        void Read(ReadingKind kind, string from, string? to, double value) => readings.Add(new(readings.Count, kind, from, to, value, 0.02));
        for (var i = 0; i < all.Length; i++)
            for (var k = i + 1; k < all.Length; k++) Read(ReadingKind.CentreDistance, all[i].Id, all[k].Id, all[i].At.DistanceTo(all[k].At) + 0.01 * ((i + 2 * k) % 3 - 1));
        for (var i = 0; i < holes.Length; i++) Read(ReadingKind.Diameter, $"H{i + 1}", null, i == holes.Length - 1 ? bore : 8 + 0.01 * (i % 3));
        var edges = corners.Select((_, i) => new Feature($"E{i + 1}", FeatureKind.Edge) { From = $"C{i + 1}", To = $"C{(i + 1) % 4 + 1}" });
        return new("plate", "Plate", [.. all.Select(f => new Feature(f.Id, f.Kind) { Sketch = f.At }), .. edges], [.. readings]);
    }

    static IntentPlan Found(Sample sample, params string[] forced) => Intention.Find(Adjust.Solve(sample, searchMirrors: false), new() { Forced = [.. forced] });

    /// <summary>The run takes H1 to H5, or whichever lines up most; the key is held along its own line all the same.</summary>
    [Theory]
    [InlineData("spaced:H1,H2,H3,H4,H5@along.H1-H3")]
    [InlineData("spaced:H1,H2,H3,H4,H5@along.H5-H2")]
    [InlineData("line:H2,H4@along.H1-H3")]
    [InlineData("symmetric:H1,H5,H3,H3@along.H5-H2")]
    public void A_forced_key_is_held_and_told_whatever_direction_the_run_took(string key)
    {
        var found = Found(Plate(Row), key);
        var told = Assert.Single(found.Findings, f => f.Standing == Standing.Forced);
        Assert.Equal(key, told.Key);
        Assert.True(found.Conditions > 0);
        var (a, b) = key.Split('.')[1].Split('-') is [var first, var last] ? (found.Of(first)!.At, found.Of(last)!.At) : default;
        double Along(string id) => (found.Of(id)!.At - a).Dot((b - a).Unit);
        double Off(string id) => (found.Of(id)!.At - a).Dot((b - a).Unit.Left);
        if (told.Kind == PatternKind.EquallySpaced)
            for (var i = 1; i < 4; i++) Assert.Equal(2 * Along($"H{i + 1}"), Along($"H{i}") + Along($"H{i + 2}"), 1e-5);
        else if (told.Kind == PatternKind.Symmetric) Assert.Equal(2 * Along("H3"), Along("H1") + Along("H5"), 1e-5);
        else Assert.Equal(Off("H2"), Off("H4"), 1e-5);
    }

    [Fact]
    public void What_was_forced_against_the_readings_has_no_odds_for_it_and_a_caution()
    {
        var found = Found(Plate([.. Row[..4], new(102, 0)]), "spaced:H1,H2,H3,H4,H5@along.H1-H3");
        var told = Assert.Single(found.Findings, f => f.Standing == Standing.Forced);
        Assert.Null(told.Odds);
        Assert.Contains(found.Cautions, c => c.StartsWith($"You asked for {told.Key}, yet the readings speak against it", StringComparison.Ordinal));
        Assert.Equal("over a million to 1 against it", PatternWords.OddsFor(-116));
        Assert.Equal("over a million to 1", PatternWords.OddsFor(116));
    }

    /// <summary>114.3 by 76.2 mm about a bore, the corners of which are 137.37 mm apart: no circle that anybody set out.</summary>
    [Fact]
    public void Corners_of_an_oblong_are_no_pitch_circle()
    {
        Vec2[] at = [new(-57.15, -38.1), new(57.15, -38.1), new(57.15, 38.1), new(-57.15, 38.1), new(0, 0)];
        var sample = Plate(at, 31.75, new(152.4, 101.6));
        var found = Found(sample);
        Assert.DoesNotContain(found.Held, f => f.Kind is PatternKind.PitchCircle or PatternKind.EqualSteps);
        Assert.Contains(found.Held, f => f.Kind == PatternKind.Symmetric && f.Features.Contains("H5"));
        Assert.Empty(Drawn(found, sample).PitchCircles);
    }

    /// <summary>Six holes on 80 mm: the circle fits a plate 100 mm high, and runs off one of 74.</summary>
    [Theory]
    [InlineData(100, 1), InlineData(74, 0)]
    public void A_pitch_circle_is_drawn_where_the_part_holds_it_and_noted_always(double height, int drawn)
    {
        Vec2[] at = [.. Enumerable.Range(0, 6).Select(i => 40 * Vec2.Polar(i * Math.PI / 3)), Vec2.Zero];
        var sample = Plate(at, 30, new(100, height));
        var part = Drawn(Found(sample), sample);
        Assert.Equal(drawn, part.PitchCircles.Length);
        Assert.Contains(part.Notes, n => n.Contains("pitch circle ⌀80", StringComparison.Ordinal));
    }

    static FlatPart Drawn(IntentPlan found, Sample sample) => MeantPart.Of(found, sample, Writing.Millimetres).Part;
}
