using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>All admissible readings between the features of a survey, each with its derivatives and the ± of the instrument that would take it.</summary>
sealed class Candidates
{
    readonly Solver _solver;
    readonly Fit _fit;
    readonly ImmutableArray<Reach> _instruments;
    readonly List<Candidate> _all;

    sealed record Candidate(Observed Quantity, Slope Slope, Reach Reach);

    public Candidates(Solver solver, Fit fit, ImmutableArray<Reach> instruments)
    {
        (_solver, _fit, _instruments) = (solver, fit, instruments);
        var taken = Enumerable.Range(0, fit.Weights.Length).Where(r => fit.Weights[r] > 0).Select(r => Key(solver.Equations.Rows[r])).ToHashSet();
        _all = [.. Admissible().Where(q => !taken.Contains(Key(q))).Select(Make).OfType<Candidate>()];
    }

    /// <summary>Readings that stop a free motion, those that stop it most firmly for their ± first.</summary>
    public ImmutableArray<NextReading> Holding(int most, CancellationToken stop) =>
        [.. Ranking.Holding(_fit, [.. _all.Select(c => (c.Slope, c.Reach.Std))], most, stop).Select(i => Told(_all[i], 1, "holds one free motion"))];

    /// <summary>The present largest uncertainty, the dimension that has it, and the readings that lower it most.</summary>
    public (double Largest, string Worst, ImmutableArray<NextReading> Readings) Lowering(int most, CancellationToken stop)
    {
        var dimensions = Dimensions().ToList();
        var (now, worst, best) = Ranking.Lowering(_solver, _fit, [.. dimensions.Select(Linear)], [.. _all.Select(c => (c.Slope, c.Reach.Std))], most, stop);
        if (worst < 0) return (0, "", []);
        return (now, DimensionName(dimensions[worst]), [.. best.Select(b =>
            Told(_all[b.Candidate], now - b.Then, FormattableString.Invariant($"largest ± falls from {2 * now:0.###} to {2 * b.Then:0.###} mm")))]);
    }

    /// <summary>For each mirror the readings that tell it from its image.</summary>
    public IEnumerable<NextReading> Deciding(ImmutableArray<Mirror> mirrors)
    {
        foreach (var d in mirrors.SelectMany(m => m.Deciding))
            yield return new NextReading(ReadingKind.CentreDistance, d.From, d.To, d.First, Reach(ReadingKind.CentreDistance, d.First)?.Instrument ?? "", 1,
                FormattableString.Invariant($"decides the side: {d.First:0.##} mm one way, {d.Second:0.##} mm the other"));
    }

    NextReading Told(Candidate c, double gain, string words)
    {
        var features = _solver.Layout.Features;
        return new NextReading(c.Quantity.Kind, features[c.Quantity.From].Id, c.Quantity.To < 0 ? null : features[c.Quantity.To].Id, c.Slope.Value, c.Reach.Instrument, gain, words);
    }

    string DimensionName(Observed d)
    {
        var features = _solver.Layout.Features;
        return d.To < 0 ? $"the size of {features[d.From].Id}" : $"{features[d.From].Id} to {features[d.To].Id}";
    }

    Slope Linear(Observed quantity)
    {
        var (value, columns, rates) = Quantities.Linear(_solver, _fit, quantity);
        return new Slope(value, columns, rates);
    }

    static (ReadingKind, int, int) Key(Observed o) => (o.Kind, Math.Min(o.From, o.To), Math.Max(o.From, o.To));

    Candidate? Make(Observed quantity)
    {
        var slope = Linear(quantity);
        if (!(slope.Value > 0)) return null;
        if (quantity.Kind == ReadingKind.AngleBetweenEdges && slope.Value < 0.1) return null;
        return Reach(quantity.Kind, slope.Value) is { } reach ? new Candidate(quantity, slope, reach) : null;
    }

    /// <summary>The best instrument that reads the kind and reaches that far.</summary>
    Reach? Reach(ReadingKind kind, double value)
    {
        var angle = Observations.IsAngle(kind);
        return _instruments.Where(i => i.Angles == angle && !i.Heights && (angle || i.Longest >= value)).OrderBy(i => i.Std).FirstOrDefault();
    }

    IEnumerable<Observed> Dimensions()
    {
        var layout = _solver.Layout;
        for (var a = 0; a < layout.Features.Length; a++)
        {
            foreach (var size in Sizes(a)) yield return size;
            if (!layout.HasPlace(a)) continue;
            for (var b = a + 1; b < layout.Features.Length; b++)
                if (layout.HasPlace(b)) yield return Quantities.Distance(a, b);
        }
    }

    IEnumerable<Observed> Admissible()
    {
        var layout = _solver.Layout;
        var opposite = Enumerable.Range(0, layout.Features.Length).FirstOrDefault(layout.HasPlace);
        for (var a = 0; a < layout.Features.Length; a++)
        {
            foreach (var size in Sizes(a)) yield return size;
            for (var b = 0; b < layout.Features.Length; b++)
            {
                if (a == b || layout.Features[b].From is { } f && (f == layout.Features[a].Id || layout.Features[b].To == layout.Features[a].Id)) continue;
                foreach (var kind in Between(a, b)) yield return new Observed(kind, a, b, 0, 1, -1, kind == ReadingKind.AcrossEdges ? opposite : 0);
            }
        }
    }

    IEnumerable<Observed> Sizes(int feature)
    {
        ReadingKind[] kinds = _solver.Layout.Features[feature].Kind switch
        {
            FeatureKind.Hole => [ReadingKind.Diameter],
            FeatureKind.Arc => [ReadingKind.Radius],
            FeatureKind.Slot => [ReadingKind.SlotWidth, ReadingKind.SlotLength],
            FeatureKind.Edge when _solver.Layout.IsCornerEdge(feature) => [ReadingKind.LengthAlongEdge],
            _ => [],
        };
        return kinds.Select(k => new Observed(k, feature, -1, 0, 1, -1, 0));
    }

    /// <summary>What a person can read between two features with jaws, tape or protractor.</summary>
    IEnumerable<ReadingKind> Between(int a, int b)
    {
        var (first, second) = (_solver.Layout.Features[a].Kind, _solver.Layout.Features[b].Kind);
        bool Round(FeatureKind k) => k is FeatureKind.Hole or FeatureKind.Arc;
        if (second == FeatureKind.Edge)
        {
            if (Round(first)) yield return ReadingKind.EdgeToHole;
            else if (first == FeatureKind.Point) yield return ReadingKind.CentreToEdge;
            else if (first == FeatureKind.Edge && a < b) yield return ReadingKind.AngleBetweenEdges;
        }
        else if (a < b && first != FeatureKind.Edge)
        {
            if (Round(first) && Round(second)) yield return ReadingKind.OutsideOverHoles;
            if ((Round(first) || Round(second)) && first != FeatureKind.Slot && second != FeatureKind.Slot) yield return ReadingKind.InsideBetweenHoles;
            if (first == FeatureKind.Point && second == FeatureKind.Point) yield return ReadingKind.CentreDistance;
        }
    }
}
