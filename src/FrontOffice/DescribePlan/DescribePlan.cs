using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;

namespace WitnessMark.FrontOffice.DescribePlan;

/// <summary>The plan of a flat sample in words: for whoever cannot see the squared paper, or reads it over the telephone.</summary>
public static class DescribePlan
{
    internal const string Doubtful = "Doubtful readings", Loose = "Not held yet", NextTitle = "Read next";

    /// <summary>Distances told per feature: more an ear does not keep.</summary>
    const int Neighbours = 2;

    public static PlanInWords Run(Sample? sample, Plan? plan, NextAdvice? advice)
    {
        if (sample is not { Features.Length: > 0 } s) return new("The paper is empty: no feature has been placed.", [], []);
        if (plan is null) return new($"{Count(s.Features.Length, "feature")} placed roughly; no reading counts yet.", [.. s.Features.Select(Rough)], Next(advice));
        var believed = plan.Believed;
        var moves = Moving(believed);
        ImmutableArray<FeatureTold> features = [.. s.Features.Select(f => Told(f, believed, moves))];
        ImmutableArray<WordGroup> groups = [.. Doubts(s, plan), .. Loosely(believed, moves), .. Mirrors(believed), .. Next(advice)];
        return new(Headline(believed, features), features, groups);
    }

    static string Headline(Plan plan, ImmutableArray<FeatureTold> features)
    {
        if (!plan.Convergence.Converged) return plan.Convergence.Words;
        var loose = features.Count(f => f.State != "held" && !f.State.StartsWith("held, ", StringComparison.Ordinal));
        if (loose > 0) return $"{features.Length - loose} of {Count(features.Length, "feature")} held.";
        var largest = plan.Distances().Select(d => 2 * d.Std).DefaultIfEmpty(0).Max();
        return $"Every feature is held; the least sure distance is ± {Mm(largest)} mm.";
    }

    static FeatureTold Rough(Feature f) => new(f.Id, "placed", $"{Word(f.Kind)} {f.Id}{(f.From is { } a ? $", from {a} to {f.To}" : f.Sketch is { } at ? $", roughly at {at.X:0}, {at.Y:0}" : "")}.");

    static FeatureTold Told(Feature f, Plan plan, HashSet<string> moves)
    {
        var placed = plan.Of(f.Id);
        var name = f.From is { } a ? $"{Word(f.Kind)} {f.Id} from {a} to {f.To}" : $"{Word(f.Kind)} {f.Id}";
        var worn = f.Condition == FeatureCondition.Sound ? "" : $", {ConditionWords.Of(f.Condition)}";
        if (moves.Contains(f.Id)) return new(f.Id, "can still move", $"{name}{worn} can still move.");
        var size = placed is { Loose: false, Size: { } z } && double.IsFinite(z.Std) ? $"{(f.Kind switch { FeatureKind.Hole => "diameter", FeatureKind.Arc => "radius", _ => "width" })} {z.Value.ToString("0.00", Plain)} ± {Mm(2 * z.Std)}" : "";
        var missing = size.Length == 0 && f.Kind is FeatureKind.Hole or FeatureKind.Arc or FeatureKind.Slot && placed.Size is not null ? "size not read yet" : "";
        if (f.Kind == FeatureKind.Edge)
        {
            var length = placed is { Length: { } l, Loose: false } ? $"{l.Value.ToString("0.00", Plain)} ± {Mm(2 * l.Std)} long" : "direction held";
            return new(f.Id, $"held, {length}", $"{name}{worn}: {length}.");
        }
        var near = Near(f, plan);
        var state = missing.Length > 0 ? missing : near.Length > 0 ? $"held, {near[0]}" : "held";
        string[] parts = [.. new[] { size, missing }.Where(w => w.Length > 0), .. near, $"place {placed.At.X.ToString("0.00", Plain)}, {placed.At.Y.ToString("0.00", Plain)}{(placed.Loose ? "" : $" ± {Mm(2 * placed.Ellipse.Major)}")}"];
        return new(f.Id, state, $"{name}{worn}: {string.Join("; ", parts)}.");
    }

    /// <summary>Off the nearest features that have a place: a distance means more to a hand than a pair of coordinates.</summary>
    static string[] Near(Feature f, Plan plan)
    {
        var at = plan.Of(f.Id).At;
        return [.. plan.Features.Where(o => o.Id != f.Id && o.Kind != FeatureKind.Edge)
            .OrderBy(o => o.At.DistanceTo(at)).Take(Neighbours)
            .Select(o => plan.Distance(o.Id, f.Id) is { } d ? $"{d.Value.ToString("0.00", Plain)} ± {Mm(2 * d.Std)} from {o.Id}" : "").Where(w => w.Length > 0)];
    }

    static IEnumerable<WordGroup> Doubts(Sample sample, Plan plan)
    {
        if (plan.Doubts.Indices.IsEmpty) yield break;
        yield return new(Doubtful, [.. plan.Doubts.Indices.Select(i => Doubt(sample.Readings[i], plan.Believed.Readings[i]))]);
    }

    static string Doubt(Reading r, ReadingResult result)
    {
        var rule = KindRule.Of(r.Kind);
        var what = $"Reading {r.Index + 1}, {rule.Words} {r.From}{(r.To is { } to ? $" to {to}" : "")}, says {(r.Written.Length > 0 ? r.Written : r.Value.ToString("0.00", Plain))}";
        return rule.Measure == Measure.Length && result.WouldRead is { } would
            ? $"{what}; the others make it {would.ToString("0.00", Plain)} mm. Read it again."
            : $"{what} and does not fit the others. Read it again.";
    }

    static IEnumerable<WordGroup> Loosely(Plan plan, HashSet<string> moves)
    {
        ImmutableArray<string> lines = [.. plan.Loose.Where(g => g.Ids.Any(moves.Contains)).Select(g => $"{string.Join(", ", g.Ids)} can move together in {Count(g.FreeMotions, "way")}; {Count(g.ReadingsMissing, "reading")} would hold {(g.Ids.Length == 1 ? "it" : "them")}.")];
        if (!lines.IsEmpty) yield return new(Loose, lines);
    }

    static IEnumerable<WordGroup> Mirrors(Plan plan)
    {
        if (plan.Mirrors.IsEmpty) yield break;
        yield return new("Two shapes fit", [.. plan.Mirrors.Select(m => $"{string.Join(", ", m.Flips)} may lie on either side{(m.About.Length == 2 ? $" of the line {m.About[0]} to {m.About[1]}" : "")}.{(m.Deciding.IsEmpty ? "" : $" The distance {m.Deciding[0].From} to {m.Deciding[0].To} decides.")}")]);
    }

    static ImmutableArray<WordGroup> Next(NextAdvice? advice) => advice is { Readings: { IsDefaultOrEmpty: false } best }
        ? [new(NextTitle, [advice.Words, .. best.Take(3).Select(n => $"{KindRule.Of(n.Kind).Words} {n.From}{(n.To is { } to ? $" to {to}" : "")}, with the {n.Instrument}.")])]
        : [];

    /// <summary>A share of the longest motion below this is rounding.</summary>
    const double Still = 0.02;

    static HashSet<string> Moving(Plan plan) => [.. plan.Loose.SelectMany(g => g.Motions).SelectMany(m => m).Where(a => a.Move.Length > Still).Select(a => a.Id)];

    static string Word(FeatureKind kind) => kind == FeatureKind.Point ? "corner" : kind.ToString().ToLowerInvariant();

    internal static string Count(int n, string one) => $"{n} {one}{(n == 1 ? "" : "s")}";

    internal static string Mm(double mm) => mm.ToString(mm >= 0.1 ? "0.00" : "0.000", Plain);

    internal static CultureInfo Plain => CultureInfo.InvariantCulture;
}
