using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.DrawingOffice.Survey.Solid.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>A part in space before it is taken: its sketch made linear, and every reading that a hand with these tools could take between its features.</summary>
sealed class SolidTaking : ITakingNetwork<SolidReadingKind>
{
    /// <summary>mm. Cause: beside <see cref="Knowledge"/>'s widest double precision carries no finer, and a thousandth is nothing to any tool.</summary>
    const double Exact = 1e-3;

    readonly SolidSolver _solver;
    readonly double[] _x;
    readonly ImmutableArray<BenchTool> _tools;
    readonly List<TakeCandidate<SolidReadingKind>> _candidates = [];

    /// <param name="sample">Flat faces joined; every feature sketched.</param>
    public SolidTaking(SolidSample sample, ImmutableArray<BenchTool> tools, CancellationToken stop)
    {
        _tools = tools;
        _solver = new SolidSolver(sample, Math.Max(SolidObservations.Lever(sample), SketchSize(sample)));
        _x = SolidStart.From(_solver, stop);
        Stand();
        _solver.Equations.Linearise(_x, new double[_solver.Weights.Length]);
        var rows = Enumerable.Range(0, _solver.Weights.Length).ToLookup(_solver.IsTestable);
        Taken = [.. rows[true].Select(r => RowOf(r, 0))];
        Given = [.. rows[false].Select(r => RowOf(r, Exact))];
        var taken = _solver.Equations.Rows.Where(o => o.Reading >= 0).Select(Key).ToHashSet();
        foreach (var (kind, from, to) in SolidReadable.Of(_solver, _x))
            if (Make(kind, from, to) is { } candidate && !taken.Contains(Key(Quantity(kind, from, to)))) _candidates.Add(candidate);
        Candidates = [.. _candidates.Select(c => c.Row)];
        Dimensions = [.. Wanted()];
        Datum = Orthonormal.Of(Layout.DatumMotions(_x, _solver.Centre(_x)));
    }

    public int[] BlockOf => Layout.BlockOf;

    public double[][] Datum { get; }

    public IReadOnlyList<TakeRow> Taken { get; }

    public IReadOnlyList<TakeRow> Given { get; }

    public IReadOnlyList<TakeRow> Candidates { get; }

    public IReadOnlyList<TakeRow> Dimensions { get; }

    public TakeCandidate<SolidReadingKind> At(int candidate) => _candidates[candidate];

    SolidLayout Layout => _solver.Layout;

    public string Id(int feature) => Layout.Features[feature].Id;

    /// <summary>A set-up that can still tilt is no part of it.</summary>
    public IEnumerable<(int Feature, IEnumerable<int> Unknowns)> Held =>
        Enumerable.Range(0, Layout.Features.Length).Where(f => Layout.Kind(f) != SolidKind.SetUp).Select(f => (f, Enumerable.Range(Layout.First(f), Layout.Unknowns(f))));

    /// <summary>A set-up's plate lies where it was sketched, else the part stands on it with its lowest place.</summary>
    void Stand()
    {
        for (var s = 0; s < Layout.Features.Length; s++)
        {
            if (Layout.Kind(s) != SolidKind.SetUp) continue;
            var up = Layout.Direction(s, _x);
            double Over(Vec3 p) => up.Dot(p - Layout.Middle);
            _x[Layout.First(s) + 3] = Layout.Features[s].Sketch is { } plate ? Over(plate) : Enumerable.Range(0, Layout.Features.Length).Where(Layout.HasPlace).Select(f => Over(Layout.Place(f, _x))).DefaultIfEmpty(0).Min();
        }
    }

    TakeRow RowOf(int row, double least) =>
        new(_solver.Jacobian.ColumnsOf(row).ToArray(), _solver.Jacobian.ValuesOf(row).ToArray(), Math.Max(least, 1 / Math.Sqrt(_solver.Weights[row])));

    /// <summary>A length along an edge is the distance of its corners.</summary>
    static (Form, int, int, double) Key(SolidObserved o) => (o.Form, Math.Min(o.From, o.To), Math.Max(o.From, o.To), o.Share);

    SolidObserved Quantity(SolidReadingKind kind, int from, int to) => SolidObservations.Quantity(Layout, kind, from, to).First();

    (double Value, TakeRow Row) Linear(SolidObserved o, double std)
    {
        var columns = _solver.Equations.Columns(o);
        var rates = new double[columns.Length];
        return (_solver.Equations.Compute(o, _x, new Derivatives(columns, rates)), new TakeRow(columns, rates, std));
    }

    TakeCandidate<SolidReadingKind>? Make(SolidReadingKind kind, int from, int to)
    {
        var (value, row) = Linear(Quantity(kind, from, to), 1);
        if (!(value >= 0) || !Array.TrueForAll(row.Rates, double.IsFinite)) return null;
        var tool = BenchTool.Best(_tools, Ways(kind, from), value);
        if (tool is null) return null;
        var expected = kind == SolidReadingKind.Angle ? BetweenFaces.Shown(_solver, _x, from, to, value) : value;
        return new TakeCandidate<SolidReadingKind>(kind, from, to, expected, tool, row with { Std = tool.Std });
    }

    /// <summary>How a kind is read by hand.</summary>
    Way[] Ways(SolidReadingKind kind, int from) => kind switch
    {
        SolidReadingKind.Diameter => [Layout.Kind(from) == SolidKind.Hole ? Way.InsideJaws : Way.OutsideJaws],
        SolidReadingKind.OverHoles => [Way.InsideJaws, Way.Tape],
        SolidReadingKind.PointToPlane or SolidReadingKind.NearSideToPlane => [Way.DepthRod],
        SolidReadingKind.Height or SolidReadingKind.HeightOverPin => [Way.HeightGauge],
        SolidReadingKind.Angle => [Way.Protractor],
        _ => [Way.OutsideJaws, Way.Tape],
    };

    IEnumerable<TakeRow> Wanted()
    {
        for (var a = 0; a < Layout.Features.Length; a++)
        {
            if (Layout.SizeOf(a) >= 0) yield return new TakeRow([Layout.SizeOf(a)], [1], 1);
            for (var b = a + 1; b < Layout.Features.Length; b++)
                if (Layout.HasPlace(a) && Layout.HasPlace(b)) yield return Linear(SolidQuantities.Distance(a, b), 1).Row;
        }
    }

    static double SketchSize(SolidSample sample)
    {
        var at = sample.Features.Where(f => f is { Sketch: not null, Kind: not SolidKind.SetUp }).Select(f => f.Sketch!.Value).ToList();
        return at.Count == 0 ? 1 : Math.Max(1, at.Max(p => p.DistanceTo(at[0])));
    }
}
