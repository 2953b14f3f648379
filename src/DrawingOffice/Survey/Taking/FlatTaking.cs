using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>A flat sample before it is taken: its sketch made linear, and every reading that a hand with these tools could take between its features.</summary>
sealed class FlatTaking : ITakingNetwork<ReadingKind>
{
    readonly Solver _solver;
    readonly double[] _x;
    readonly ImmutableArray<BenchTool> _tools;
    readonly List<TakeCandidate<ReadingKind>> _candidates = [];

    public FlatTaking(Sample sample, ImmutableArray<BenchTool> tools, CancellationToken stop)
    {
        _tools = tools;
        _solver = new Solver(sample, new Layout(sample, Math.Max(Observations.Lever(sample), SketchSize(sample))));
        _x = Start.From(_solver, stop)[0];
        _solver.Equations.Linearise(_x, new double[_solver.Weights.Length]);
        var rows = Enumerable.Range(0, _solver.Weights.Length).ToLookup(_solver.IsTestable, RowOf);
        (Taken, Given) = ([.. rows[true]], [.. rows[false]]);
        var taken = _solver.Equations.Rows.Where(o => o.Reading >= 0).Select(o => Key(o.Kind, o.From, o.To)).ToHashSet();
        foreach (var (kind, from, to) in Readable())
            if (!taken.Contains(Key(kind, from, to)) && Make(kind, from, to) is { } candidate) _candidates.Add(candidate);
        Candidates = [.. _candidates.Select(c => c.Row)];
        Dimensions = [.. Wanted()];
        Datum = Orthonormal.Of(_solver.Layout.DatumMotions(_x, Vec2.Zero));
    }

    public int[] BlockOf => _solver.Layout.BlockOf;

    public double[][] Datum { get; }

    public IReadOnlyList<TakeRow> Taken { get; }

    public IReadOnlyList<TakeRow> Given { get; }

    public IReadOnlyList<TakeRow> Candidates { get; }

    public IReadOnlyList<TakeRow> Dimensions { get; }

    public TakeCandidate<ReadingKind> At(int candidate) => _candidates[candidate];

    Layout Layout => _solver.Layout;

    public string Id(int feature) => Layout.Features[feature].Id;

    public IEnumerable<(int Feature, IEnumerable<int> Unknowns)> Held =>
        Enumerable.Range(0, Layout.Features.Length).Select(f => (f, Enumerable.Range(Layout.First(f), Layout.Unknowns(f))));

    TakeRow RowOf(int row) => new(_solver.Jacobian.ColumnsOf(row).ToArray(), _solver.Jacobian.ValuesOf(row).ToArray(), 1 / Math.Sqrt(_solver.Weights[row]));

    static (ReadingKind, int, int) Key(ReadingKind kind, int a, int b) => (kind, Math.Min(a, b), Math.Max(a, b));

    TakeCandidate<ReadingKind>? Make(ReadingKind kind, int from, int to)
    {
        var opposite = Enumerable.Range(0, Layout.Features.Length).FirstOrDefault(Layout.HasPlace);
        var quantity = new Observed(kind, from, to, 0, 1, -1, kind == ReadingKind.AcrossEdges ? opposite : 0);
        var columns = _solver.Equations.Columns(quantity);
        var rates = new double[columns.Length];
        var value = _solver.Equations.Compute(quantity, _x, new Derivatives(columns, rates));
        if (!(value > 0) || (kind == ReadingKind.AngleBetweenEdges && value < Parallel)) return null;
        var tool = BenchTool.Best(_tools, Ways(kind), value);
        return tool is null ? null : new TakeCandidate<ReadingKind>(kind, from, to, value, tool, new TakeRow(columns, rates, tool.Std));
    }

    /// <summary>Radians. Cause: below this two edges are read across; a protractor does not close on them.</summary>
    const double Parallel = 0.1;

    /// <summary>How a kind is read by hand: inside jaws spread in holes, outside jaws nip from outside or across the metal between two holes.</summary>
    static Way[] Ways(ReadingKind kind) => kind switch
    {
        ReadingKind.Diameter or ReadingKind.SlotWidth or ReadingKind.SlotLength => [Way.InsideJaws],
        ReadingKind.OutsideOverHoles => [Way.InsideJaws, Way.Tape],
        ReadingKind.Radius => [Way.RadiusGauge],
        ReadingKind.Rise => [Way.DepthRod],
        ReadingKind.CentreToEdge => [Way.DepthRod, Way.Tape],
        ReadingKind.AngleBetweenEdges => [Way.Protractor],
        _ => [Way.OutsideJaws, Way.Tape],
    };

    IEnumerable<TakeRow> Wanted()
    {
        TakeRow Of(Observed o)
        {
            var columns = _solver.Equations.Columns(o);
            var rates = new double[columns.Length];
            _solver.Equations.Compute(o, _x, new Derivatives(columns, rates));
            return new TakeRow(columns, rates, 1);
        }
        for (var a = 0; a < Layout.Features.Length; a++)
        {
            if (Layout.SizeOf(a) >= 0) yield return new TakeRow([Layout.SizeOf(a)], [1], 1);
            for (var b = a + 1; b < Layout.Features.Length; b++)
                if (Layout.HasPlace(a) && Layout.HasPlace(b)) yield return Of(Quantities.Distance(a, b));
        }
    }

    IEnumerable<(ReadingKind, int, int)> Readable()
    {
        var features = Layout.Features;
        for (var a = 0; a < features.Length; a++)
        {
            foreach (var kind in Alone(features[a])) yield return (kind, a, -1);
            for (var b = 0; b < features.Length; b++)
            {
                if (a == b || features[b].From == features[a].Id || features[b].To == features[a].Id) continue;
                foreach (var kind in Between(a, b)) yield return (kind, a, b);
            }
        }
    }

    static IEnumerable<ReadingKind> Alone(Feature f) => f.Kind switch
    {
        FeatureKind.Hole => [ReadingKind.Diameter],
        FeatureKind.Arc => f.From is null ? [ReadingKind.Radius] : [ReadingKind.Radius, ReadingKind.Chord, ReadingKind.Rise],
        FeatureKind.Slot => [ReadingKind.SlotWidth, ReadingKind.SlotLength],
        FeatureKind.Edge when f.From is not null => [ReadingKind.LengthAlongEdge],
        _ => [],
    };

    IEnumerable<ReadingKind> Between(int a, int b)
    {
        var (first, second) = (Layout.Features[a].Kind, Layout.Features[b].Kind);
        static bool Round(FeatureKind k) => k is FeatureKind.Hole or FeatureKind.Arc;
        if (second == FeatureKind.Edge)
        {
            if (Round(first)) yield return ReadingKind.EdgeToHole;
            else if (first is FeatureKind.Point or FeatureKind.Slot) yield return ReadingKind.CentreToEdge;
            if ((first == FeatureKind.Edge && a < b) || first == FeatureKind.Slot)
            {
                if (Math.Abs(Math.IEEERemainder(Layout.Turn(a, _x) - Layout.Turn(b, _x), Math.PI)) >= Parallel) yield return ReadingKind.AngleBetweenEdges;
                else if (first == FeatureKind.Edge) yield return ReadingKind.AcrossEdges;
            }
        }
        else if (a < b && first != FeatureKind.Edge)
        {
            if (first == FeatureKind.Hole && second == FeatureKind.Hole) yield return ReadingKind.OutsideOverHoles;
            if (first == FeatureKind.Slot || second == FeatureKind.Slot) yield return ReadingKind.CentreDistance;
            else if (Round(first) || Round(second)) yield return ReadingKind.InsideBetweenHoles;
            else if (!IsEdge(a, b)) yield return ReadingKind.CentreDistance;
        }
    }

    /// <summary>Two corners with an edge between them are read along the edge.</summary>
    bool IsEdge(int a, int b) =>
        Layout.Features.Any(e => e.Kind == FeatureKind.Edge && ((e.From == Layout.Features[a].Id && e.To == Layout.Features[b].Id) || (e.From == Layout.Features[b].Id && e.To == Layout.Features[a].Id)));

    static double SketchSize(Sample sample)
    {
        var at = sample.Features.Where(f => f.Sketch is not null).Select(f => f.Sketch!.Value).ToList();
        return at.Count == 0 ? 1 : Math.Max(1, double.Hypot(at.Max(p => p.X) - at.Min(p => p.X), at.Max(p => p.Y) - at.Min(p => p.Y)));
    }
}
