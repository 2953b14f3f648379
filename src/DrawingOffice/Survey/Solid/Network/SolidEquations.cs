using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>
/// The observation equations of a survey in space: computed − observed for each, with exact derivatives (tested against
/// differences). Each form works out how its value changes with places, directions, offsets and sizes; <see cref="Slopes"/> passes
/// that on to the unknowns.
/// </summary>
sealed class SolidEquations : IResiduals
{
    /// <summary>Cause: faces within a degree of square are nothing to lay a depth rod across.</summary>
    const double Flattest = 0.02;

    readonly SolidLayout _layout;
    readonly ImmutableArray<SolidObserved> _rows;

    public SolidEquations(SolidLayout layout, ImmutableArray<SolidObserved> rows)
    {
        (_layout, _rows) = (layout, rows);
        Jacobian = new SparseRows([.. rows.Select(Columns)], layout.Count);
    }

    public SparseRows Jacobian { get; }

    public ImmutableArray<SolidObserved> Rows => _rows;

    public void Evaluate(ReadOnlySpan<double> x, Span<double> residuals)
    {
        for (var r = 0; r < _rows.Length; r++) residuals[r] = Residual(r, x);
    }

    public void Linearise(ReadOnlySpan<double> x, Span<double> residuals)
    {
        for (var r = 0; r < _rows.Length; r++) residuals[r] = Linearise(r, x);
    }

    /// <summary>Computed − observed of one row, its derivatives put into the Jacobian.</summary>
    public double Linearise(int row, ReadOnlySpan<double> x)
    {
        var d = new Derivatives(Jacobian.ColumnsOf(row), Jacobian.ValuesOf(row));
        d.Clear();
        return Compute(_rows[row], x, d) - _rows[row].Value;
    }

    public double Residual(int row, ReadOnlySpan<double> x) => Compute(_rows[row], x, default) - _rows[row].Value;

    /// <summary>What a reading would be at x, and its derivatives where wanted.</summary>
    public double Compute(in SolidObserved o, ReadOnlySpan<double> x, Derivatives d)
    {
        var to = new Slopes(_layout, x, d);
        return o.Form switch
        {
            Form.Gap => Gap(o, x, to),
            Form.OffLine => OffLine(o, x, to) + to.Radius(o.From, o.Pin, o.Share),
            Form.OnSurface => OffLine(o, x, to) + to.Radius(o.To, 0, -1),
            Form.Over => Over(o, x, to),
            Form.Opposite => Opposite(o, x, to),
            Form.Size => 2 * to.Radius(o.From, 0, 1, 2),
            Form.Angle => Angle(o, x, to),
            Form.Lean => Lean(o, x, to),
            Form.Skew => Skew(o, x, to),
            Form.Beside => Beside(o, x, to),
            Form.Aside => Aside(o, x, to),
            Form.RimFlat => RimFlat(o, x, to),
            Form.RimRound => Gap(o, x, to) + to.Radius(o.To, 0, -1),
            Form.OnFace => OnFace(o, x, to),
            Form.Length => Length(o, x, d),
            Form.Foot => Foot(o, x, to),
            _ => FrameFlat(o, x, to),
        };
    }

    double Gap(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var v = _layout.Place(o.To, x) - _layout.Place(o.From, x);
        var u = v.Unit;
        to.Place(o.From, -u);
        to.Place(o.To, u);
        if (o.Share == 0) return v.Length;
        return v.Length + to.Radius(o.From, o.Pin, o.Share) + to.Radius(o.To, o.Pin, o.Share);
    }

    double OffLine(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var along = _layout.Direction(o.To, x);
        var v = Centre(o, x) - _layout.Place(o.To, x);
        var t = v.Dot(along);
        var across = v - t * along;
        var u = across.Unit;
        PassCentre(o, x, to, u);
        to.Place(o.To, -u);
        to.Direction(o.To, -t * u);
        return across.Length;
    }

    double Over(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var n = _layout.Direction(o.To, x);
        var p = Centre(o, x) - _layout.Middle;
        var height = n.Dot(p) - _layout.Offset(o.To, x);
        var sign = o.Signed || height >= 0 ? 1 : -1;
        PassCentre(o, x, to, sign * n);
        to.Direction(o.To, sign * p);
        to.Offset(o.To, -sign);
        if (o.Share == 0) return sign * height;

        // The rim of a leaning hole or tube reaches r·sin of the angle between its axis and the normal.
        var lean = _layout.HasDirection(o.From) ? n.Dot(_layout.Direction(o.From, x)) : 0;
        var sine = Math.Sqrt(Math.Max(1e-12, 1 - lean * lean));
        var radius = to.Radius(o.From, o.Pin, o.Share, sine);
        if (_layout.HasDirection(o.From))
        {
            to.Direction(o.To, -radius * lean / sine * _layout.Direction(o.From, x));
            to.Direction(o.From, -radius * lean / sine * n);
        }
        return sign * height + radius * sine;
    }

    /// <summary>A point or hole's own place; of a line the place opposite the spot.</summary>
    Vec3 Centre(in SolidObserved o, ReadOnlySpan<double> x)
    {
        var place = _layout.Place(o.From, x);
        if (o.Spot < 0 || !_layout.IsLine(o.From)) return place;
        var along = _layout.Direction(o.From, x);
        return place + along * along.Dot(_layout.Place(o.Spot, x) - place);
    }

    void PassCentre(in SolidObserved o, ReadOnlySpan<double> x, Slopes to, Vec3 rate)
    {
        if (o.Spot < 0 || !_layout.IsLine(o.From))
        {
            to.Place(o.From, rate);
            return;
        }
        var along = _layout.Direction(o.From, x);
        var v = _layout.Place(o.Spot, x) - _layout.Place(o.From, x);
        var slide = along * along.Dot(rate);
        to.Place(o.From, rate - slide);
        to.Place(o.Spot, slide);
        to.Direction(o.From, rate * along.Dot(v) + v * along.Dot(rate));
    }

    double Opposite(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var (n, m) = (_layout.Direction(o.To, x), _layout.Direction(o.From, x));
        var p = o.Spot < 0 ? Vec3.Zero : _layout.Place(o.Spot, x) - _layout.Middle;
        // Faces square to one another have no such distance; the reading then contradicts the rest by far, and must not by infinity.
        var lean = m.Dot(n) is var dot && Math.Abs(dot) > Flattest ? dot : Math.CopySign(Flattest, dot);
        var rise = (_layout.Offset(o.From, x) - m.Dot(p)) / lean;
        var height = n.Dot(p) - _layout.Offset(o.To, x) + rise;
        var sign = o.Signed || height >= 0 ? 1 : -1;
        if (o.Spot >= 0) to.Place(o.Spot, sign * (n - m / lean));
        to.Direction(o.To, sign * (p - rise / lean * m));
        to.Direction(o.From, -sign * (p / lean + rise / lean * n));
        to.Offset(o.To, -sign);
        to.Offset(o.From, sign / lean);
        return sign * height;
    }

    double Angle(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var (a, b) = (_layout.Direction(o.From, x), _layout.Direction(o.To, x));
        var between = Math.Atan2(a.Cross(b).Length, a.Dot(b));
        var rate = -1 / Math.Max(1e-9, Math.Sin(between));
        if (_layout.IsPlane(o.From) != _layout.IsPlane(o.To))
        {
            (between, rate) = (Math.PI / 2 - between, -rate);
            if (between < 0) (between, rate) = (-between, -rate);
        }
        if (Math.Abs(Math.PI - between - o.Value) < Math.Abs(between - o.Value)) (between, rate) = (Math.PI - between, -rate);
        to.Direction(o.From, rate * b);
        to.Direction(o.To, rate * a);
        return between;
    }

    double Lean(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var (a, b) = (_layout.Direction(o.From, x), _layout.Direction(o.To, x));
        var arm = o.Part == 0 ? 1 : _layout.Lever;
        to.Direction(o.From, arm * b);
        to.Direction(o.To, arm * a);
        return arm * a.Dot(b);
    }

    double Skew(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var (value, ofFirst, ofSecond) = Components.Across(_layout.Direction(o.From, x), _layout.Direction(o.To, x), o.Part);
        to.Direction(o.From, ofFirst);
        to.Direction(o.To, ofSecond);
        return value;
    }

    double Beside(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var (value, ofAlong, ofPlace) = Components.Across(_layout.Direction(o.To, x), _layout.Place(o.From, x) - _layout.Place(o.To, x), o.Part);
        to.Direction(o.To, ofAlong);
        to.Place(o.From, ofPlace);
        to.Place(o.To, -ofPlace);
        return value;
    }

    double Aside(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var (n, along) = (_layout.Direction(o.Spot, x), _layout.Direction(o.To, x));
        var v = o.Part == 1 ? _layout.Direction(o.From, x) : _layout.Place(o.From, x) - _layout.Place(o.To, x);
        var side = n.Cross(along);
        to.Direction(o.Spot, along.Cross(v));
        to.Direction(o.To, v.Cross(n));
        if (o.Part == 1) to.Direction(o.From, side);
        else
        {
            to.Place(o.From, side);
            to.Place(o.To, -side);
        }
        return v.Dot(side);
    }

    double RimFlat(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var axis = _layout.Direction(o.To, x);
        var v = _layout.Place(o.From, x) - _layout.Place(o.To, x);
        to.Place(o.From, axis);
        to.Place(o.To, -axis);
        to.Direction(o.To, v);
        return axis.Dot(v);
    }

    double OnFace(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var n = _layout.Direction(o.To, x);
        var u = SolidLayout.Read(o.Spot, x);
        var flat = u - u.Dot(n) * n;
        var ex = flat.Unit;
        var p = _layout.Place(o.From, x) - _layout.Middle;
        var axis = o.Part == 0 ? ex : n.Cross(ex);
        var ofX = o.Part == 0 ? p : p.Cross(n);
        var swing = (ofX - ex * ex.Dot(ofX)) / flat.Length;
        var turn = -swing.Dot(n) * u - u.Dot(n) * swing;
        to.Place(o.From, axis);
        to.Direction(o.To, o.Part == 0 ? turn : turn + ex.Cross(p));
        to.Raw(o.Spot, swing - swing.Dot(n) * n);
        to.One(o.Spot + 3 + o.Part, 1);
        return axis.Dot(p) + x[o.Spot + 3 + o.Part];
    }

    double Length(in SolidObserved o, ReadOnlySpan<double> x, Derivatives d)
    {
        var v = SolidLayout.Read(o.To, x);
        new Slopes(_layout, x, d).Raw(o.To, v.Unit);
        return v.Length - _layout.Lever;
    }

    double Foot(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var (along, v) = (_layout.Direction(o.From, x), _layout.Place(o.From, x) - _layout.Middle);
        to.Place(o.From, along);
        to.Direction(o.From, v);
        return along.Dot(v);
    }

    double FrameFlat(in SolidObserved o, ReadOnlySpan<double> x, Slopes to)
    {
        var (n, u) = (_layout.Direction(o.To, x), SolidLayout.Read(o.Spot, x));
        to.Raw(o.Spot, n);
        to.Direction(o.To, u);
        return u.Dot(n);
    }

    /// <summary>Every unknown that the equation may touch.</summary>
    public int[] Columns(SolidObserved o)
    {
        if (o.Form == Form.Length) return [o.To, o.To + 1, o.To + 2];
        var frame = o.Form is Form.OnFace or Form.FrameFlat;
        var of = Named(o).SelectMany(f => _layout.Touched(f));
        return [.. (frame ? of.Concat(Enumerable.Range(o.Spot, o.Form == Form.OnFace ? 5 : 3)) : of).Distinct()];
    }

    /// <summary>The features that an equation names, the spot included.</summary>
    public static IEnumerable<int> Named(SolidObserved o)
    {
        if (o.Form == Form.Length) yield break;
        if (o.From >= 0) yield return o.From;
        if (o.To >= 0) yield return o.To;
        if (o.Spot >= 0 && (o.Form is Form.Over or Form.Opposite or Form.Aside or Form.OffLine)) yield return o.Spot;
    }
}
