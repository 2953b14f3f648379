using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSolid;

namespace WitnessMark.FrontOffice.DescribePlan;

/// <summary>A part in space in words: x to the right, y to the back, z up.</summary>
public static class DescribeSolid
{
    const int Neighbours = 2;

    public static PlanInWords Run(SolidResult? result)
    {
        if (result is not { } r) return new("Nothing stands in space yet.", [], []);
        var plan = r.Plan.Believed;
        ImmutableArray<FeatureTold> features = [.. plan.Features.Select(f => Told(f, plan))];
        ImmutableArray<WordGroup> groups = [.. Doubts(r), .. Loosely(plan), .. Next(r.Next)];
        return new(Headline(plan, features), features, groups);
    }

    static string Headline(SolidPlan plan, ImmutableArray<FeatureTold> features)
    {
        if (!plan.Convergence.Converged) return plan.Convergence.Words;
        var loose = plan.Features.Count(f => f.Loose && f.Kind != SolidKind.SetUp);
        return loose == 0 ? "Every feature is held." : $"{features.Length - loose} of {DescribePlan.Count(features.Length, "feature")} held.";
    }

    static FeatureTold Told(SolidPlaced f, SolidPlan plan)
    {
        var name = $"{SolidWords.Word(f.Kind)} {f.Id}";
        if (f.Loose) return new(f.Id, "can still move", $"{name} can still move.");
        var size = f.Size is { } s && double.IsFinite(s.Std) ? $"diameter {Figure(s.Value)} ± {DescribePlan.Mm(2 * s.Std)}" : "";
        var length = f.Length is { } l && double.IsFinite(l.Std) ? $"{Figure(l.Value)} ± {DescribePlan.Mm(2 * l.Std)} long" : "";
        var near = HasPlace(f.Kind) ? Near(f, plan) : [];
        var place = HasPlace(f.Kind) ? $"place {Figure(f.At.X)} right, {Figure(f.At.Y)} back, {Figure(f.At.Z)} up ± {DescribePlan.Mm(2 * f.Ellipsoid.Major.Length)}" : "";
        string[] parts = [.. new[] { size, length }.Concat(near).Append(place).Where(w => w.Length > 0)];
        return new(f.Id, parts.Length == 0 ? "held" : $"held, {parts[0]}", $"{name}: {(parts.Length == 0 ? "held" : string.Join("; ", parts))}.");
    }

    static bool HasPlace(SolidKind kind) => kind is SolidKind.Point or SolidKind.Hole;

    /// <summary>How far off, by place alone: the plan's own ± of a pair is told in the table.</summary>
    static string[] Near(SolidPlaced f, SolidPlan plan) =>
    [
        .. plan.Features.Where(o => o.Id != f.Id && HasPlace(o.Kind) && !o.Loose).OrderBy(o => (o.At - f.At).Length).Take(Neighbours)
            .Select(o => $"{Figure((o.At - f.At).Length)} from {o.Id}"),
    ];

    static IEnumerable<WordGroup> Doubts(SolidResult r)
    {
        if (!r.Plan.Doubts.Indices.IsEmpty) yield return new(DescribePlan.Doubtful, [.. r.Plan.Doubts.Indices.Select(i => $"{DoubtfulWords.Say(r, i)}. Read it again.")]);
    }

    static IEnumerable<WordGroup> Loosely(SolidPlan plan)
    {
        if (!plan.Loose.IsEmpty) yield return new(DescribePlan.Loose, [.. plan.Loose.Select(g => $"{string.Join(", ", g.Ids)} can move together in {DescribePlan.Count(g.FreeMotions, "way")}; {DescribePlan.Count(g.ReadingsMissing, "reading")} would hold {(g.Ids.Length == 1 ? "it" : "them")}.")]);
    }

    static IEnumerable<WordGroup> Next(SolidAdvice? advice)
    {
        if (advice is { Readings: { IsDefaultOrEmpty: false } best })
            yield return new(DescribePlan.NextTitle, [advice.Words, .. best.Take(3).Select(n => $"{SolidRule.Of(n.Kind).Words} {n.From}{(n.To is { } to ? $" to {to}" : "")}, with the {n.Instrument}.")]);
    }

    static string Figure(double mm) => mm.ToString("0.00", DescribePlan.Plain);
}
