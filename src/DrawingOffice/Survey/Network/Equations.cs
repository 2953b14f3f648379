using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network.Wear;
using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>One observation equation: a reading, one coordinate of a pick, or a condition that follows from the features (reading −1).</summary>
/// <param name="To">Feature; first unknown of the frame for a pick; −1 for none.</param>
/// <param name="From">Feature; −1 for what is known beforehand of a frame's scale.</param>
/// <param name="Part">0, 1 for a pick's x, y, 2 for the scale of a frame; for two free edges the feature opposite which they are measured; else 0.</param>
readonly record struct Observed(ReadingKind Kind, int From, int To, double Value, double Sigma, int Reading, int Part)
{
    public RowWear Wear { get; init; }
}

/// <summary>
/// The observation equations of a survey: computed − observed for each, with exact derivatives. What each kind computes is
/// said at <see cref="ReadingKind"/>; derivatives are tested against differences.
/// </summary>
sealed class Equations : IResiduals
{
    readonly Layout _layout;
    readonly ImmutableArray<Observed> _rows;

    public Equations(Layout layout, ImmutableArray<Observed> rows)
    {
        (_layout, _rows) = (layout, rows);
        Jacobian = new SparseRows([.. rows.Select(Columns)], layout.Count);
    }

    public SparseRows Jacobian { get; }

    public ImmutableArray<Observed> Rows => _rows;

    public void Evaluate(ReadOnlySpan<double> x, Span<double> residuals)
    {
        for (var r = 0; r < _rows.Length; r++) residuals[r] = Residual(r, x);
    }

    public void Linearise(ReadOnlySpan<double> x, Span<double> residuals)
    {
        for (var r = 0; r < _rows.Length; r++)
        {
            var row = new Derivatives(Jacobian.ColumnsOf(r), Jacobian.ValuesOf(r));
            row.Clear();
            residuals[r] = Compute(_rows[r], x, row) - _rows[r].Value;
        }
    }

    /// <summary>Computed − observed of one row.</summary>
    public double Residual(int row, ReadOnlySpan<double> x) => Compute(_rows[row], x, default) - _rows[row].Value;

    /// <summary>What a reading would be at x, and its derivatives where wanted.</summary>
    public double Compute(in Observed o, ReadOnlySpan<double> x, Derivatives d)
    {
        switch (o.Kind)
        {
            case ReadingKind.CentreDistance:
                return Distance(o.From, o.To, x, d);
            case ReadingKind.OutsideOverHoles:
                return Distance(o.From, o.To, x, d) + Radius(o.From, x, d, 1) + Radius(o.To, x, d, 1);
            case ReadingKind.InsideBetweenHoles:
                return Distance(o.From, o.To, x, d) + Radius(o.From, x, d, -1) + Radius(o.To, x, d, -1);
            case ReadingKind.EdgeToHole:
                return Off(o.From, o.To, x, d) + Radius(o.From, x, d, -1);
            case ReadingKind.AcrossEdges:
                return Across(o, x, d);
            case ReadingKind.CentreToEdge:
            case ReadingKind.On when _layout.Features[o.To].Kind == FeatureKind.Edge:
                return Off(o.From, o.To, x, d);
            case ReadingKind.On:
                return Distance(o.From, o.To, x, d) + Radius(o.To, x, d, -1);
            case ReadingKind.LengthAlongEdge:
            case ReadingKind.Chord:
                var (from, to) = _layout.Corners(o.From);
                return Distance(from, to, x, d);
            case ReadingKind.Diameter:
            case ReadingKind.SlotWidth:
            case ReadingKind.Radius:
                d.Add(_layout.SizeOf(o.From), 1);
                return x[_layout.SizeOf(o.From)];
            case ReadingKind.SlotLength:
                var first = _layout.First(o.From);
                d.Add(first + 3, 1);
                d.Add(first + 4, 1);
                return x[first + 3] + x[first + 4];
            case ReadingKind.Rise:
                return Rise(o, x, d);
            case ReadingKind.AngleBetweenEdges:
                return Angle(o, x, d);
            case ReadingKind.Parallel:
                return Turned(o, 0, x, d);
            case ReadingKind.Square:
                return Turned(o, Math.PI / 2, x, d);
            case ReadingKind.Tangent:
                return Tangent(o, x, d);
            case ReadingKind.Picked:
                return Picked(o, x, d);
            default:
                throw new InvalidOperationException($"no equation for {o.Kind}");
        }
    }

    double Distance(int i, int j, ReadOnlySpan<double> x, Derivatives d)
    {
        var v = _layout.Place(j, x) - _layout.Place(i, x);
        var u = v.Unit;
        AddPlace(i, d, -u);
        AddPlace(j, d, u);
        return v.Length;
    }

    double Radius(int feature, ReadOnlySpan<double> x, Derivatives d, double factor)
    {
        var size = _layout.SizeOf(feature);
        if (size < 0 || _layout.Features[feature].Kind == FeatureKind.Slot) return 0;
        d.Add(size, factor * _layout.RadiusRate(feature));
        return factor * _layout.Radius(feature, x);
    }

    /// <summary>Distance, never negative, of a feature's place (a corner edge's middle) from an edge.</summary>
    double Off(int feature, int edge, ReadOnlySpan<double> x, Derivatives d)
    {
        var off = Side(feature, edge, x);
        AddSide(feature, edge, x, d, off < 0 ? -1 : 1);
        return Math.Abs(off);
    }

    /// <summary>Distance of two edges: at the middle of the one that has corners, else opposite the feature named by the part.</summary>
    double Across(in Observed o, ReadOnlySpan<double> x, Derivatives d)
    {
        if (_layout.IsCornerEdge(o.From)) return Off(o.From, o.To, x, d);
        if (_layout.IsCornerEdge(o.To)) return Off(o.To, o.From, x, d);
        var flip = _layout.Line(o.From, x).Along.Dot(_layout.Line(o.To, x).Along) < 0 ? -1 : 1;
        var off = Side(o.Part, o.From, x) - flip * Side(o.Part, o.To, x);
        var sign = off < 0 ? -1 : 1;
        AddSide(o.Part, o.From, x, d, sign);
        AddSide(o.Part, o.To, x, d, -sign * flip);
        return Math.Abs(off);
    }

    /// <summary>Distance of a feature's place from an edge, positive on the left of its direction.</summary>
    double Side(int feature, int edge, ReadOnlySpan<double> x)
    {
        var (at, along) = _layout.Line(edge, x);
        return along.Left.Dot(Middle(feature, x) - at);
    }

    void AddSide(int feature, int edge, ReadOnlySpan<double> x, Derivatives d, double factor)
    {
        if (d.Idle) return;
        var p = Middle(feature, x);
        var (at, along) = _layout.Line(edge, x);
        var normal = factor * along.Left;
        AddPlace(feature, d, normal);
        if (_layout.IsCornerEdge(edge))
        {
            var (a, b) = _layout.Corners(edge);
            var t = along.Dot(p - at) / _layout.Place(a, x).DistanceTo(_layout.Place(b, x));
            AddPlace(a, d, (t - 1) * normal);
            AddPlace(b, d, -t * normal);
        }
        else
        {
            d.Add(_layout.First(edge), -factor * along.Dot(p) / _layout.Lever);
            d.Add(_layout.First(edge) + 1, -factor);
        }
    }

    /// <summary>Height over the chord. More than half the chord means an arc of more than a half circle.</summary>
    double Rise(in Observed o, ReadOnlySpan<double> x, Derivatives d)
    {
        var (a, b) = _layout.Corners(o.From);
        var chord = _layout.Place(b, x) - _layout.Place(a, x);
        var centre = _layout.Place(o.From, x);
        var side = o.Value > chord.Length / 2 ? 1 : -1;
        var normal = chord.Unit.Left;
        var off = normal.Dot(centre - _layout.Place(a, x));
        if (off < 0) (normal, off) = (-normal, -off);
        var t = chord.Unit.Dot(centre - _layout.Place(a, x)) / chord.Length;
        AddPlace(o.From, d, side * normal);
        AddPlace(a, d, side * (t - 1) * normal);
        AddPlace(b, d, -side * t * normal);
        return side * off + Radius(o.From, x, d, 1);
    }

    double Angle(in Observed o, ReadOnlySpan<double> x, Derivatives d)
    {
        var between = Math.IEEERemainder(_layout.Turn(o.To, x) - _layout.Turn(o.From, x), 2 * Math.PI);
        var (angle, sign) = (Math.Abs(between), Math.Sign(between));
        if (Math.Abs(Math.PI - angle - o.Value) < Math.Abs(angle - o.Value)) (angle, sign) = (Math.PI - angle, -sign);
        AddTurn(o.To, x, d, sign);
        AddTurn(o.From, x, d, -sign);
        return angle;
    }

    /// <summary>How far the second direction is from the first turned by <paramref name="by"/>, as lines (no arrow), radians.</summary>
    double Turned(in Observed o, double by, ReadOnlySpan<double> x, Derivatives d)
    {
        AddTurn(o.To, x, d, 1);
        AddTurn(o.From, x, d, -1);
        return Math.IEEERemainder(_layout.Turn(o.To, x) - _layout.Turn(o.From, x) - by, Math.PI);
    }

    double Tangent(in Observed o, ReadOnlySpan<double> x, Derivatives d)
    {
        var (from, to) = _layout.Features[o.From].Kind == FeatureKind.Edge ? (o.To, o.From) : (o.From, o.To);
        if (_layout.Features[to].Kind == FeatureKind.Edge) return Off(from, to, x, d) + Radius(from, x, d, -1);
        var (r1, r2) = (_layout.Radius(from, x), _layout.Radius(to, x));
        var apart = _layout.Place(from, x).DistanceTo(_layout.Place(to, x));
        var outside = Math.Abs(apart - r1 - r2) <= Math.Abs(apart - Math.Abs(r1 - r2));
        var (f1, f2) = outside ? (-1, -1) : r1 > r2 ? (-1, 1) : (1, -1);
        return Distance(from, to, x, d) + Radius(from, x, d, f1) + Radius(to, x, d, f2);
    }

    /// <summary>One coordinate of the place in its frame: turned by the frame's turn, scaled, then shifted.</summary>
    double Picked(in Observed o, ReadOnlySpan<double> x, Derivatives d)
    {
        var frame = o.To;
        if (o.Part == 2)
        {
            d.Add(frame + 3, 1);
            return x[frame + 3];
        }
        var turn = x[frame + 2] / _layout.Lever;
        var scale = _layout.ScaleOf(frame, x);
        var seen = scale * _layout.Place(o.From, x).Turned(turn);
        var axis = o.Part == 0 ? new Vec2(1, 0) : new Vec2(0, 1);
        AddPlace(o.From, d, scale * axis.Turned(-turn));
        d.Add(frame + o.Part, 1);
        d.Add(frame + 2, axis.Dot(seen.Left) / _layout.Lever);
        if (_layout.IsScaled(frame)) d.Add(frame + 3, axis.Dot(seen) / scale / _layout.Lever);
        return axis.Dot(seen) + x[frame + o.Part];
    }

    Vec2 Middle(int feature, ReadOnlySpan<double> x)
    {
        if (!_layout.IsCornerEdge(feature)) return _layout.Place(feature, x);
        var (a, b) = _layout.Corners(feature);
        return (_layout.Place(a, x) + _layout.Place(b, x)) / 2;
    }

    /// <summary>Pass a derivative with respect to a feature's middle on to its unknowns.</summary>
    void AddPlace(int feature, Derivatives d, Vec2 rate)
    {
        if (d.Idle) return;
        if (_layout.IsCornerEdge(feature))
        {
            var (a, b) = _layout.Corners(feature);
            AddPlace(a, d, rate / 2);
            AddPlace(b, d, rate / 2);
            return;
        }
        d.Add(_layout.First(feature), rate.X);
        d.Add(_layout.First(feature) + 1, rate.Y);
    }

    void AddTurn(int feature, ReadOnlySpan<double> x, Derivatives d, double rate)
    {
        if (d.Idle) return;
        if (!_layout.IsCornerEdge(feature))
        {
            d.Add(_layout.TurnOf(feature), rate / _layout.Lever);
            return;
        }
        var (a, b) = _layout.Corners(feature);
        var v = _layout.Place(b, x) - _layout.Place(a, x);
        var swing = rate * v.Left / v.Dot(v);
        AddPlace(a, d, -swing);
        AddPlace(b, d, swing);
    }

    /// <summary>Every unknown that the equation may touch.</summary>
    public int[] Columns(Observed o)
    {
        if (o.From < 0) return [o.To + 3];
        IEnumerable<int> of = o.Kind == ReadingKind.Picked
            ? [.. UnknownsOf(o.From), .. Enumerable.Range(o.To, _layout.IsScaled(o.To) ? 4 : 3)]
            : [.. UnknownsOf(o.From), .. o.To < 0 ? [] : UnknownsOf(o.To)];
        if (o.Kind == ReadingKind.AcrossEdges) of = of.Concat(UnknownsOf(o.Part));
        return [.. of.Distinct()];
    }

    IEnumerable<int> UnknownsOf(int feature)
    {
        var own = Enumerable.Range(_layout.First(feature), _layout.Unknowns(feature));
        if (_layout.Features[feature].From is null) return own;
        var (a, b) = _layout.Corners(feature);
        return [.. own, .. UnknownsOf(a), .. UnknownsOf(b)];
    }
}
