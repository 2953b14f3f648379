using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>All readings in space that a person could take between the features, each with its derivatives and the ± of the instrument that would take it.</summary>
sealed class SolidCandidates
{
    readonly SolidSolver _solver;
    readonly SolidLayout _layout;
    readonly Fit _fit;
    readonly ImmutableArray<Reach> _instruments;
    readonly List<Candidate> _all;

    sealed record Candidate(SolidReadingKind Kind, int From, int To, Slope Slope, Reach Reach);

    public SolidCandidates(SolidSolver solver, Fit fit, ImmutableArray<Reach> instruments)
    {
        (_solver, _layout, _fit, _instruments) = (solver, solver.Layout, fit, instruments);
        var taken = solver.Sample.Readings.Where(r => Enumerable.Range(0, fit.Weights.Length).All(k => solver.ReadingOf(k) != r.Index || fit.Weights[k] > 0))
            .Select(r => Key(r.Kind, _layout.IndexOf(r.From), r.To is null ? -1 : _layout.IndexOf(r.To))).ToHashSet();
        _all = [.. SolidReadable.Of(solver, fit.X).Where(q => !taken.Contains(Key(q.Kind, q.From, q.To))).Select(q => Make(q.Kind, q.From, q.To)).OfType<Candidate>()];
    }

    static (SolidReadingKind, int, int) Key(SolidReadingKind kind, int from, int to) => (kind, Math.Min(from, to), Math.Max(from, to));

    public ImmutableArray<SolidNextReading> Holding(int most, CancellationToken stop) =>
        [.. Ranking.Holding(_fit, [.. _all.Select(c => (c.Slope, c.Reach.Std))], most, stop).Select(i => Told(_all[i], 1, "holds one free motion"))];

    /// <summary>The present largest uncertainty, the dimension that has it, and the readings that lower it most.</summary>
    public (double Largest, string Worst, ImmutableArray<SolidNextReading> Readings) Lowering(int most, CancellationToken stop)
    {
        bool Held(Slope s) => !Adjustment.Moves(_fit, s.Columns, s.Rates);
        var dimensions = Dimensions().Select(d => (Quantity: d, Slope: Linear(d.Kind, d.From, d.To))).Where(d => Held(d.Slope)).ToList();
        var candidates = _all.Where(c => Held(c.Slope)).ToList();
        var (now, worst, best) = Ranking.Lowering(_solver, _fit, [.. dimensions.Select(d => d.Slope)], [.. candidates.Select(c => (c.Slope, c.Reach.Std))], most, stop);
        if (worst < 0) return (0, "", []);
        var d = dimensions[worst].Quantity;
        var name = d.To < 0 ? $"the size of {_layout.Features[d.From].Id}" : $"{_layout.Features[d.From].Id} to {_layout.Features[d.To].Id}";
        return (now, name, [.. best.Select(b => Told(candidates[b.Candidate], now - b.Then, FormattableString.Invariant($"largest ± falls from {2 * now:0.###} to {2 * b.Then:0.###} mm")))]);
    }

    /// <summary>For each second shape the readings that tell it from the first.</summary>
    public IEnumerable<SolidNextReading> Deciding(ImmutableArray<SolidMirror> mirrors) =>
        mirrors.SelectMany(m => m.Deciding).Select(d => new SolidNextReading(SolidReadingKind.Distance, d.From, d.To, d.First, ReachOf(SolidReadingKind.Distance, d.First)?.Instrument ?? "", 1,
            FormattableString.Invariant($"decides the side: {d.First:0.##} mm one way, {d.Second:0.##} mm the other")));

    SolidNextReading Told(Candidate c, double gain, string words) =>
        new(c.Kind, _layout.Features[c.From].Id, c.To < 0 ? null : _layout.Features[c.To].Id, Expected(c), c.Reach.Instrument, gain, words);

    /// <summary>Faces are told by the angle in their corner, which a bevel shows; the equation takes it or its supplement.</summary>
    double Expected(Candidate c) => c.Kind == SolidReadingKind.Angle ? BetweenFaces.Shown(_solver, _fit.X, c.From, c.To, c.Slope.Value) : c.Slope.Value;

    Slope Linear(SolidReadingKind kind, int from, int to)
    {
        var (value, columns, rates) = SolidQuantities.Linear(_solver, _fit, SolidObservations.Quantity(_layout, kind, from, to).First());
        return new Slope(value, columns, rates);
    }

    Candidate? Make(SolidReadingKind kind, int from, int to)
    {
        var slope = Linear(kind, from, to);
        return slope.Value > 0 && Array.TrueForAll(slope.Rates, double.IsFinite) && ReachOf(kind, slope.Value) is { } reach ? new Candidate(kind, from, to, slope, reach) : null;
    }

    /// <summary>The best instrument that reads the kind and reaches that far.</summary>
    Reach? ReachOf(SolidReadingKind kind, double value)
    {
        var angle = SolidObservations.IsAngle(kind);
        var height = kind is SolidReadingKind.Height or SolidReadingKind.HeightOverPin;
        return _instruments.Where(i => i.Angles == angle && i.Heights == height && (angle || i.Longest >= value)).OrderBy(i => i.Std).FirstOrDefault();
    }

    IEnumerable<(SolidReadingKind Kind, int From, int To)> Dimensions()
    {
        for (var a = 0; a < _layout.Features.Length; a++)
        {
            if (_layout.SizeOf(a) >= 0) yield return (SolidReadingKind.Diameter, a, -1);
            if (!_layout.HasPlace(a)) continue;
            for (var b = a + 1; b < _layout.Features.Length; b++)
                if (_layout.HasPlace(b)) yield return (SolidReadingKind.Distance, a, b);
        }
    }
}
