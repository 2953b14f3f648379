using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.FromPlan;

/// <summary>What is decided beside the survey: made-to sizes and tolerances, by feature and by span.</summary>
public sealed record Decisions
{
    /// <summary>Made-to size of a hole's diameter, a slot's width or an arc's radius, by the feature's id.</summary>
    public Func<string, string?> MadeTo { get; init; } = _ => null;

    /// <summary>Wanted tolerance of the same, half-width, mm.</summary>
    public Func<string, double?> Wanted { get; init; } = _ => null;

    public Func<Span, string?> MadeToBetween { get; init; } = _ => null;

    public Func<Span, double?> WantedBetween { get; init; } = _ => null;
}

/// <summary>An adjusted plan made ready for drawing, with every ± from its full covariance.</summary>
/// <param name="Cautions">What must be known before metal is cut; also among the part's notes.</param>
public sealed record PlanPart(FlatPart Part, Knowledge Knowledge, ImmutableArray<string> Cautions)
{
    /// <param name="origin">Corner or hole that positions are counted from; null: the corner nearest to the left bottom of the part as it was sketched.</param>
    /// <param name="along">Feature that one axis runs to, whichever lies nearer in the sketch; null: along the edge from which the places are known best.</param>
    /// <exception cref="RefusedException">The plan has not settled, its outline does not close, or the datum is not on it.</exception>
    public static PlanPart Of(Plan plan, Sample sample, Decisions? decisions = null, string? origin = null, string? along = null)
    {
        if (!plan.Convergence.Converged) throw new RefusedException(Refusal.Of("plan", plan.Convergence.Words, "a plan that has settled is needed before it is drawn"));
        var believed = plan.Believed;
        var frame = DatumChoice.Of(believed, sample, origin, along);
        var decided = decisions ?? new();
        var cautions = Warnings(plan, believed);
        var part = new FlatPart(PlanOutline.Of(believed, sample, frame, decided))
        {
            Holes = [.. believed.Features.Where(f => f.Kind == FeatureKind.Hole).Select(f => new RoundHole(f.Id, frame.Of(f.At), Size(f, f.Size, decided)))],
            Slots =
            [
                .. believed.Features.Where(f => f.Kind == FeatureKind.Slot)
                    .Select(f => new LongHole(f.Id, frame.Of(f.At), f.Turn - frame.Turn, Size(f, f.Size, decided), new(f.Length?.Value ?? 0, f.Length?.Std))),
            ],
            Notes = cautions,
            Datum = new(Vec2.Zero, frame.Origin),
        };
        return new(part, new() { Std = frame.Std, MadeTo = decided.MadeToBetween, Wanted = decided.WantedBetween }, cautions);
    }

    static Sized Size(Placed f, Uncertain? size, Decisions decided) => size is { } s
        ? new(s.Value, f.Loose ? null : s.Std, decided.MadeTo(f.Id), decided.Wanted(f.Id))
        : throw new RefusedException(Refusal.Of($"size of {f.Id}", null, "measure it before the part is drawn"));

    static ImmutableArray<string> Warnings(Plan plan, Plan believed)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        if (plan.Doubts.Alone is { Length: > 0 } aside) cautions.Add($"Doubtful and set aside: reading {Listed(aside)}. Measure again before cutting.");
        foreach (var group in plan.Doubts.Groups) cautions.Add($"At least one of readings {Listed(group)} is wrong. Measure them again before cutting.");
        var loose = believed.Features.Where(f => f.Loose).Select(f => f.Id).ToList();
        if (loose.Count > 0) cautions.Add($"Not fixed by the readings: {string.Join(", ", loose)}. Do not cut from this drawing until measured.");
        if (believed.Mirrors.Length > 0) cautions.Add($"May lie mirrored: {string.Join(", ", believed.Mirrors.SelectMany(m => m.Flips).Distinct())}. Take the deciding reading first.");
        return cautions.ToImmutable();
    }

    static string Listed(ImmutableArray<int> readings) => string.Join(", ", readings.Select(i => i + 1));
}
