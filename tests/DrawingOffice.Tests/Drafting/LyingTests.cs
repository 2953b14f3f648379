using WitnessMark.DrawingOffice.Drafting.FromPlan;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

/// <summary>How a drawing lies: as the person sketched the part.</summary>
public sealed class LyingTests
{
    static Sample Turned(ulong seed, double angle)
    {
        var sample = Surveys.Plate(seed);
        return sample with { Features = [.. sample.Features.Select(f => f with { Sketch = f.Sketch?.Turned(angle) })] };
    }

    static (double Turn, double Mirror) Fit(IEnumerable<(Vec2 From, Vec2 To)> pairs)
    {
        var all = pairs.ToList();
        Vec2 Mean(Func<(Vec2 From, Vec2 To), Vec2> which) => new(all.Average(p => which(p).X), all.Average(p => which(p).Y));
        var (a, b) = (Mean(p => p.From), Mean(p => p.To));
        var moved = all.Select(p => (From: p.From - a, To: p.To - b)).ToList();
        // As complex numbers: from* · to is large when the one is the other turned, from · to when it is the other's mirror image.
        var (cross, dot) = (moved.Sum(p => p.From.Cross(p.To)), moved.Sum(p => p.From.Dot(p.To)));
        var (x, y) = (moved.Sum(p => p.From.X * p.To.X - p.From.Y * p.To.Y), moved.Sum(p => p.From.X * p.To.Y + p.From.Y * p.To.X));
        return (Math.Atan2(cross, dot), Math.Sqrt(x * x + y * y) / Math.Sqrt(cross * cross + dot * dot));
    }

    [Fact]
    [Truth(Grade.Property, "least-squares turn from sketch to drawing, with and without a mirror")]
    public void A_drawing_lies_as_the_part_was_sketched_and_never_mirrored()
    {
        for (var degrees = -180; degrees < 180; degrees += 15)
        {
            var sample = Turned((ulong)(degrees + 200), degrees * Math.PI / 180);
            var part = PlanPart.Of(Adjust.Solve(sample, searchMirrors: false), sample).Part;
            var sketch = sample.Features.Where(f => f.Sketch is not null).ToDictionary(f => f.Id, f => f.Sketch!.Value);
            var drawn = part.Holes.Select(h => (h.Id, At: h.Centre)).Concat(part.Loops[0].Select(s => (Id: s.CornerId!, At: s.From)));
            var (turn, mirror) = Fit(drawn.Select(d => (sketch[d.Id], d.At)));
            // The plate's slanting edge may be its datum when the sketch itself is slanted; a degree for the roughness of the sketch.
            Assert.InRange(Math.Abs(turn) * 180 / Math.PI, 0, 46);
            Assert.InRange(mirror, 0, 0.9);
        }
    }

    [Theory]
    [InlineData(0, "C1")]
    [InlineData(90, "C5")]
    [InlineData(-90, "C2")]
    [Truth(Grade.CommonPractice, "zero at the left bottom, x to the right, y up")]
    public void Zero_is_the_left_bottom_corner_and_the_part_lies_over_and_right_of_it(int degrees, string corner)
    {
        var sample = Turned(11, degrees * Math.PI / 180);
        var part = PlanPart.Of(Adjust.Solve(sample), sample).Part;
        Assert.Equal(corner, part.Datum!.Id);
        Assert.InRange(part.Bounds.Left, -0.2, 0);
        Assert.InRange(part.Bounds.Bottom, -0.2, 0);
        Assert.All(part.Holes, h => Assert.True(h.Centre is { X: > 0, Y: > 0 }));
    }

    [Fact]
    public void A_cut_off_corner_does_not_lay_the_part_askew()
    {
        // Upside down the slanting edge C3 to C4 is at the left bottom.
        var sample = Turned(11, Math.PI);
        var part = PlanPart.Of(Adjust.Solve(sample), sample).Part;
        Assert.Equal("C3", part.Datum!.Id);
        Assert.Equal(150, part.Bounds.Width, 0.3);
    }

    [Fact]
    [Truth(Grade.Property, "of two edges at the corner the one that leaves the places better known")]
    public void The_datum_lies_along_the_surer_edge()
    {
        var sample = Surveys.Plate(7);
        var plan = Adjust.Solve(sample);
        double Sum(PlanPart p) => new[] { "C2", "C3", "C4", "C5", "H1", "H2", "H3", "H4", "H5" }
            .Sum(id => new Vec2[] { new(1, 0), new(0, 1) }.Sum(way => Math.Pow(p.Knowledge.Std(new("C1", id, way, 0))!.Value, 2)));
        var chosen = Sum(PlanPart.Of(plan, sample));
        Assert.Equal(Math.Min(Sum(PlanPart.Of(plan, sample, null, "C1", "C2")), Sum(PlanPart.Of(plan, sample, null, "C1", "C5"))), chosen, 1e-12);
    }

    [Fact]
    public void A_sample_without_edges_is_told_that_it_needs_an_outline()
    {
        var sample = Surveys.Plate(5);
        var bare = sample with { Features = [.. sample.Features.Where(f => f.Kind != FeatureKind.Edge)] };
        var refused = Assert.Throws<RefusedException>(() => PlanPart.Of(Adjust.Solve(bare), bare));
        Assert.StartsWith("outline", refused.Message, StringComparison.Ordinal);
    }
}
