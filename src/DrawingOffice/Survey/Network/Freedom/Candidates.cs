using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network.Wear;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>All admissible readings between the features of a survey, each with its derivatives and the ± of the instrument that would take it.</summary>
sealed class Candidates
{
    /// <summary>How many of the worst dimensions are followed when the largest uncertainty is lowered.</summary>
    public const int Watched = 48;

    readonly Solver _solver;
    readonly Fit _fit;
    readonly ImmutableArray<Reach> _instruments;
    readonly List<Candidate> _all;
    readonly WearRules _rules;

    sealed record Candidate(Observed Quantity, double Value, int[] Columns, double[] Rates, Reach Reach);

    public Candidates(Solver solver, Fit fit, ImmutableArray<Reach> instruments)
    {
        (_solver, _fit, _instruments, _rules) = (solver, fit, instruments, new WearRules(solver.Sample, solver.Layout));
        var taken = Enumerable.Range(0, fit.Weights.Length).Where(r => fit.Weights[r] > 0).Select(r => Key(solver.Equations.Rows[r])).ToHashSet();
        _all = [.. Admissible().Where(q => !taken.Contains(Key(q))).Select(Make).OfType<Candidate>()];
    }

    /// <summary>Readings that stop a free motion, those that stop it most firmly for their ± first.</summary>
    public ImmutableArray<NextReading> Holding(int most, CancellationToken stop)
    {
        var ranked = new List<(Candidate C, double Firm)>();
        foreach (var c in _all)
        {
            stop.ThrowIfCancellationRequested();
            double square = 0;
            foreach (var motion in _fit.Free)
            {
                double change = 0;
                for (var k = 0; k < c.Columns.Length; k++) change += c.Rates[k] * motion[c.Columns[k]];
                square += change * change;
            }
            if (square > 1e-6) ranked.Add((c, Math.Sqrt(square) / c.Reach.Std));
        }
        return [.. ranked.OrderByDescending(r => r.Firm).Take(most).Select(r => Told(r.C, 1, "holds one free motion"))];
    }

    /// <summary>The present largest uncertainty, the dimension that has it, and the readings that lower it most.</summary>
    public (double Largest, string Worst, ImmutableArray<NextReading> Readings) Lowering(int most, CancellationToken stop)
    {
        var cofactors = Cofactors();
        var dimensions = Dimensions().Select(d => (Quantity: d, Linear: Quantities.Linear(_solver, _fit, d)))
            .Select(d => (d.Quantity, d.Linear.Columns, d.Linear.Rates, Variance: Bilinear(cofactors, d.Linear.Columns, d.Linear.Rates, d.Linear.Columns, d.Linear.Rates)))
            .OrderByDescending(d => d.Variance).Take(Watched + 1).ToList();
        if (dimensions.Count == 0) return (0, "", []);
        var watched = dimensions.Take(Watched).ToList();
        var floor = dimensions.Count > Watched ? dimensions[^1].Variance : 0;
        var ranked = new List<(Candidate C, double Largest, double Sum)>();
        foreach (var c in _all)
        {
            stop.ThrowIfCancellationRequested();
            var own = c.Reach.Std * c.Reach.Std + Bilinear(cofactors, c.Columns, c.Rates, c.Columns, c.Rates);
            var (largest, sum) = (floor, 0.0);
            foreach (var d in watched)
            {
                var shared = Bilinear(cofactors, d.Columns, d.Rates, c.Columns, c.Rates);
                var left = d.Variance - shared * shared / own;
                largest = Math.Max(largest, left);
                sum += left;
            }
            ranked.Add((c, largest, sum));
        }
        var now = Math.Sqrt(dimensions[0].Variance);
        var best = ranked.OrderBy(r => Math.Round(r.Largest, 12)).ThenBy(r => r.Sum).Take(most)
            .Select(r => Told(r.C, now - Math.Sqrt(r.Largest), FormattableString.Invariant($"largest ± falls from {2 * now:0.###} to {2 * Math.Sqrt(r.Largest):0.###} mm")));
        return (now, DimensionName(dimensions[0].Quantity), [.. best]);
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
        return new NextReading(c.Quantity.Kind, features[c.Quantity.From].Id, c.Quantity.To < 0 ? null : features[c.Quantity.To].Id, c.Value, c.Reach.Instrument, gain, words);
    }

    string DimensionName(Observed d)
    {
        var features = _solver.Layout.Features;
        return d.To < 0 ? $"the size of {features[d.From].Id}" : $"{features[d.From].Id} to {features[d.To].Id}";
    }

    double[][] Cofactors()
    {
        var q = new double[_solver.Layout.Count][];
        for (var u = 0; u < q.Length; u++) q[u] = _solver.Cofactors(_fit, [u], [1]);
        return q;
    }

    static double Bilinear(double[][] q, int[] a, double[] ra, int[] b, double[] rb)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++)
        {
            if (ra[i] == 0) continue;
            var row = q[a[i]];
            double part = 0;
            for (var k = 0; k < b.Length; k++) part += row[b[k]] * rb[k];
            sum += ra[i] * part;
        }
        return sum;
    }

    static (ReadingKind, int, int) Key(Observed o) => (o.Kind, Math.Min(o.From, o.To), Math.Max(o.From, o.To));

    Candidate? Make(Observed quantity)
    {
        var (value, columns, rates) = Quantities.Linear(_solver, _fit, quantity);
        if (!(value > 0)) return null;
        if (quantity.Kind == ReadingKind.AngleBetweenEdges && value < 0.1) return null;
        return Reach(quantity.Kind, value) is { } best && Worn(best, quantity) is var reach ? new Candidate(quantity, value, columns, rates, reach) : null;
    }

    /// <summary>A reading on a worn feature tells less of what was made than its instrument could.</summary>
    Reach Worn(Reach reach, Observed quantity)
    {
        var features = _solver.Layout.Features;
        var reading = new Reading(0, quantity.Kind, features[quantity.From].Id, quantity.To < 0 ? null : features[quantity.To].Id, 0, reach.Std);
        var wear = _rules.Of(reading);
        return wear == default ? reach : reach with { Std = Math.Sqrt(reach.Std * reach.Std + wear.Scale * wear.Scale + wear.Spread * wear.Spread) };
    }

    /// <summary>The best instrument that reads the kind and reaches that far.</summary>
    Reach? Reach(ReadingKind kind, double value)
    {
        var angle = Observations.IsAngle(kind);
        return _instruments.Where(i => i.Angles == angle && (angle || i.Longest >= value)).OrderBy(i => i.Std).FirstOrDefault();
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
