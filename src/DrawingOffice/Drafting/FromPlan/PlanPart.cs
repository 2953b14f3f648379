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
    /// <param name="origin">Corner or hole that positions are counted from; null: an end of the longest edge, with the part above it.</param>
    /// <param name="along">Feature that the x axis runs to; null with <paramref name="origin"/>.</param>
    /// <exception cref="RefusedException">The plan has not settled, its outline does not close, or the datum is not on it.</exception>
    public static PlanPart Of(Plan plan, Sample sample, Decisions? decisions = null, string? origin = null, string? along = null)
    {
        if (!plan.Convergence.Converged) throw new RefusedException(Refusal.Of("plan", plan.Convergence.Words, "a plan that has settled is needed before it is drawn"));
        var believed = plan.Believed;
        var (from, to) = Datum(believed, sample, origin, along);
        var frame = new PlanFrame(believed, from, to);
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
            Datum = new(Vec2.Zero, from),
        };
        return new(part, new() { Std = frame.Std, MadeTo = decided.MadeToBetween, Wanted = decided.WantedBetween }, cautions);
    }

    static Sized Size(Placed f, Uncertain? size, Decisions decided) => size is { } s
        ? new(s.Value, f.Loose ? null : s.Std, decided.MadeTo(f.Id), decided.Wanted(f.Id))
        : throw new RefusedException(Refusal.Of($"size of {f.Id}", null, "measure it before the part is drawn"));

    static (string From, string To) Datum(Plan plan, Sample sample, string? origin, string? along)
    {
        foreach (var id in new[] { origin, along })
        {
            if (id is not null && !plan.Features.Any(f => f.Id == id && f.Kind != FeatureKind.Edge)) throw new RefusedException(Refusal.Of("datum", id, "name a corner, hole, slot or arc of the sample"));
        }
        if (origin is not null && along is not null) return (origin, along);
        var edges = sample.Features.Where(f => f is { Kind: FeatureKind.Edge, From: not null, To: not null });
        if (origin is not null) edges = edges.Where(f => f.From == origin || f.To == origin);
        var longest = edges.MaxBy(f => plan.Of(f.From!).At.DistanceTo(plan.Of(f.To!).At))
            ?? throw new RefusedException(Refusal.Of("datum", origin, "an edge between two corners is needed to lay the axes on"));
        if (origin is not null) return (origin, longest.From == origin ? longest.To! : longest.From!);
        var frame = new PlanFrame(plan, longest.From!, longest.To!);
        var above = plan.Features.Sum(f => frame.Of(f.At).Y) >= 0;
        return above ? (longest.From!, longest.To!) : (longest.To!, longest.From!);
    }

    static ImmutableArray<string> Warnings(Plan plan, Plan believed)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        if (plan.Doubts.Indices.Length > 0) cautions.Add($"Doubtful and set aside: reading {string.Join(", ", plan.Doubts.Indices.Select(i => i + 1))}. Measure again before cutting.");
        var loose = believed.Features.Where(f => f.Loose).Select(f => f.Id).ToList();
        if (loose.Count > 0) cautions.Add($"Not fixed by the readings: {string.Join(", ", loose)}. Do not cut from this drawing until measured.");
        if (believed.Mirrors.Length > 0) cautions.Add($"May lie mirrored: {string.Join(", ", believed.Mirrors.SelectMany(m => m.Flips).Distinct())}. Take the deciding reading first.");
        return cautions.ToImmutable();
    }
}
