using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>
/// Where the adjustment in space starts. What is sketched starts there; the rest is placed one feature after another, best tied
/// first, each fitted to those placed before it.
/// </summary>
sealed class SolidStart
{
    /// <summary>Guesses that are settled, best fitting first. Cause: a feature has two or three places that fit at all, each met from several guesses.</summary>
    const int MostTried = 6;

    /// <summary>Cause: from a sketch some millimetres off five or six steps come within hundredths; what is left the last adjustment does anyway.</summary>
    const int Rough = 6;

    readonly SolidSolver _solver;
    readonly SolidLayout _layout;
    readonly LocalFit _fit;
    readonly double[] _x;
    readonly bool[] _placed;
    readonly bool[] _framed;
    readonly double _ordinary;

    SolidStart(SolidSolver solver)
    {
        (_solver, _layout, _fit) = (solver, solver.Layout, new LocalFit(solver));
        _x = new double[_layout.Count];
        _placed = new bool[_layout.Features.Length];
        _framed = new bool[_layout.Frames.Length];
        _ordinary = solver.Ordinary;
    }

    public static double[] From(SolidSolver solver, CancellationToken stop)
    {
        var start = new SolidStart(solver);
        start.Sizes();
        start.Sketched();
        start.Together(stop);
        start.Others(stop);
        start.Frames(all: true);
        return start._x;
    }

    /// <summary>Coarse first, and only as far as is needed to be near.</summary>
    public static double[] Approach(SolidSolver solver, double[] start, CancellationToken stop)
    {
        var coarse = solver.Coarse();
        var near = solver.Minimise(start, coarse, stop, most: 2 * Rough);
        return near.SumOfSquares < 4 * coarse.Length ? near.X : solver.Minimise(near.X, coarse, stop).X;
    }

    void Sizes()
    {
        for (var i = 0; i < _placed.Length; i++)
        {
            var f = _layout.Features[i];
            if (_layout.DirectionAt(i) is >= 0 and var at) SolidLayout.Write(at, _x, (f.SketchDirection is { Length: > 0 } d ? d.Unit : new Vec3(0, 0, 1)) * _layout.Lever);
            if (_layout.SizeOf(i) < 0) continue;
            var read = _solver.Sample.Readings.Where(r => r.From == f.Id && r.Kind == SolidReadingKind.Diameter).Select(r => (double?)r.Value).FirstOrDefault();
            _x[_layout.SizeOf(i)] = read ?? f.SketchSize ?? 0.05 * _layout.Lever;
        }
        for (var k = 0; k < _framed.Length; k++) SolidLayout.Write(_layout.FirstOfFrames + 5 * k, _x, new Vec3(_layout.Lever, 0, 0));
    }

    void Sketched()
    {
        for (var i = 0; i < _placed.Length; i++)
        {
            if (_layout.IsCornered(i)) _placed[i] = true;
            if (!_layout.HasPlace(i) || _layout.Features[i].Sketch is not { } p || Taken(p)) continue;
            SolidLayout.Write(_layout.PlaceAt(i), _x, p);
            _placed[i] = true;
        }
        for (var i = 0; i < _placed.Length; i++)
        {
            var f = _layout.Features[i];
            if (f.SketchDirection is not { Length: > 0 } direction || f.Kind == SolidKind.SetUp) continue;
            var unit = direction.Unit;
            if (f.Kind == SolidKind.Plane && (f.Sketch ?? OnIt(i)) is { } place)
            {
                _x[_layout.First(i) + 3] = unit.Dot(place - _layout.Middle);
                _placed[i] = true;
            }
            else if (_layout.IsLine(i) && f.Sketch is { } axis)
            {
                SolidLayout.Write(_layout.PlaceAt(i), _x, Guesses.Foot(_layout, axis, unit));
                _placed[i] = true;
            }
        }
    }

    /// <summary>A place sketched for two features is no place for the second: between them a distance has no direction to grow in.</summary>
    bool Taken(Vec3 p) => Enumerable.Range(0, _placed.Length).Any(i => _placed[i] && _layout.HasPlace(i) && _layout.Place(i, _x).DistanceTo(p) < 1e-6 * _layout.Lever);

    /// <summary>Mean of the placed features that lie on a face.</summary>
    Vec3? OnIt(int plane)
    {
        var on = _fit.Rows(plane).Select(r => _solver.Equations.Rows[r]).Where(o => o is { Form: Form.Over, Signed: true, Value: 0 } && o.To == plane && _layout.HasPlace(o.From) && _placed[o.From])
            .Select(o => _layout.Place(o.From, _x)).ToList();
        return on.Count == 0 ? null : on.Aggregate(Vec3.Zero, (a, b) => a + b) / on.Count;
    }

    /// <summary>What was sketched is adjusted by itself first, so that the rest is placed from a true shape and not from a rough one.</summary>
    void Together(CancellationToken stop)
    {
        if (_placed.Count(p => p) < 3 || !_placed.Contains(false)) return;
        var weights = _solver.Coarse();
        for (var r = 0; r < weights.Length; r++)
            if (_solver.Equations.Rows[r].Form is Form.OnFace || !Array.TrueForAll(_solver.Named(r), f => _placed[f])) weights[r] = 0;
        var settled = _solver.Minimise(_x, weights, stop, most: Rough).X;
        if (Array.TrueForAll(settled, double.IsFinite)) settled.CopyTo(_x, 0);
    }

    void Others(CancellationToken stop)
    {
        while (Next() is { } feature)
        {
            stop.ThrowIfCancellationRequested();
            Frames(all: false);
            Place(feature);
            _placed[feature] = true;
        }
    }

    /// <summary>The feature best tied for its unknowns; null when all are placed.</summary>
    int? Next() => Enumerable.Range(0, _placed.Length).Where(i => !_placed[i])
        .OrderByDescending(i => Math.Min(0, Ties(i).Count - Wanted(i))).ThenByDescending(i => Ties(i).Count)
        .Select(i => (int?)i).FirstOrDefault();

    int Wanted(int feature) => _layout.IsPlane(feature) ? 3 : _layout.IsLine(feature) ? 5 : 4;

    List<int> Ties(int feature) => _fit.Ties(feature, f => _placed[f], Framed);

    bool Framed(int spot) => _framed[(spot - _layout.FirstOfFrames) / 5];

    void Place(int feature)
    {
        var ties = Ties(feature);
        var x = (double[])_x.Clone();
        var guesses = new List<(double Sum, double[] X)>();
        foreach (var _ in Guesses.Lay(_solver, feature, x, ties)) guesses.Add((_fit.Sum(x, ties, _solver.Weights, _ordinary), (double[])x.Clone()));
        var (best, least) = (guesses[0].X, double.PositiveInfinity);
        // The sketch's own guess comes first and is left only for a clear gain.
        foreach (var (_, trial) in ties.Count == 0 ? [] : guesses.Take(1).Concat(guesses.Skip(1).OrderBy(g => g.Sum).Take(MostTried)))
        {
            var sum = _fit.Settle(feature, trial, ties, _solver.Weights, _ordinary);
            if (sum < 0.5 * least - 1) (best, least) = (trial, sum);
        }
        best.CopyTo(_x, 0);
        if (_layout.Kind(feature) == SolidKind.Plane && _layout.Features[feature].SketchDirection is null) Outward(feature);
    }

    /// <summary>A face whose outside nobody sketched looks away from the middle of the part.</summary>
    void Outward(int plane)
    {
        var first = _layout.First(plane);
        if (!(_layout.Direction(plane, _x).Dot(_solver.Centre(_x) - _layout.Middle) > _x[first + 3])) return;
        for (var u = first; u < first + 4; u++) _x[u] = -_x[u];
    }

    /// <summary>Shift and turn of each frame on a face that best lay its readings on the places as they stand.</summary>
    void Frames(bool all)
    {
        for (var k = 0; k < _framed.Length; k++)
        {
            var first = _layout.FirstOfFrames + 5 * k;
            if (_framed[k] && !all || !_placed[_layout.Frames[k].Plane]) continue;
            var n = _layout.Direction(_layout.Frames[k].Plane, _x);
            var e1 = (Math.Abs(n.X) < 0.6 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0)).Cross(n).Unit;
            var e2 = n.Cross(e1);
            var picks = _solver.Sample.Readings
                .Where(r => r.Kind == SolidReadingKind.OnFace && r.Frame == _layout.Frames[k].Name && _layout.IndexOf(r.To!) == _layout.Frames[k].Plane && _placed[_layout.IndexOf(r.From)])
                .Select(r => (Place: _layout.Place(_layout.IndexOf(r.From), _x) - _layout.Middle, Seen: new Vec2(r.Value, r.ValueY)))
                .Select(p => (Here: new Vec2(e1.Dot(p.Place), e2.Dot(p.Place)), There: p.Seen)).ToList();
            if (picks.Count < 2) continue;
            var (shift, turn) = Laid(picks);
            SolidLayout.Write(first, _x, _layout.Lever * (Math.Cos(turn) * e1 - Math.Sin(turn) * e2));
            (_x[first + 3], _x[first + 4], _framed[k]) = (shift.X, shift.Y, true);
        }
    }

    /// <summary>The shift and turn that lay one set of places on another with the least squares.</summary>
    public static (Vec2 Shift, double Turn) Laid(IReadOnlyCollection<(Vec2 Here, Vec2 There)> pairs)
    {
        var here = pairs.Aggregate(Vec2.Zero, (s, p) => s + p.Here) / pairs.Count;
        var there = pairs.Aggregate(Vec2.Zero, (s, p) => s + p.There) / pairs.Count;
        var turn = Math.Atan2(pairs.Sum(p => (p.Here - here).Cross(p.There - there)), pairs.Sum(p => (p.Here - here).Dot(p.There - there)));
        return (there - here.Turned(turn), turn);
    }
}
