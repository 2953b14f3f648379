namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>What bench tools can read between the features of a part in space, as it lies at x.</summary>
sealed class SolidReadable
{
    readonly SolidLayout _layout;
    readonly double[] _x;
    readonly HashSet<(int, int)> _on;

    SolidReadable(SolidSolver solver, double[] x)
    {
        (_layout, _x) = (solver.Layout, x);
        _on = [.. solver.Equations.Rows.Where(o => o is { Form: Form.Over, Signed: true, Value: 0, Sigma: > 0 } && _layout.Kind(o.To) == SolidKind.Plane).Select(o => (o.From, o.To))];
    }

    public static IEnumerable<(SolidReadingKind Kind, int From, int To)> Of(SolidSolver solver, double[] x) => new SolidReadable(solver, x).All();

    IEnumerable<(SolidReadingKind Kind, int From, int To)> All()
    {
        for (var a = 0; a < _layout.Features.Length; a++)
        {
            if (_layout.SizeOf(a) >= 0) yield return (SolidReadingKind.Diameter, a, -1);
            for (var b = 0; b < _layout.Features.Length; b++)
            {
                if (a == b) continue;
                foreach (var kind in _layout.HasPlace(a) ? FromPlace(a, b) : _layout.Kind(a) == SolidKind.Plane && a < b ? OfFaces(a, b) : []) yield return (kind, a, b);
            }
        }
    }

    /// <summary>What jaws, tape, depth rod and height gauge can take from a corner or hole.</summary>
    IEnumerable<SolidReadingKind> FromPlace(int a, int b)
    {
        var hole = _layout.Kind(a) == SolidKind.Hole;
        switch (_layout.Kind(b))
        {
            case SolidKind.SetUp:
                if (!hole) yield return SolidReadingKind.Height;
                else if (Lean(a, b) < 0.8) yield return SolidReadingKind.HeightOverPin;
                break;
            case SolidKind.Plane when !_on.Contains((a, b)):
                if (!hole) yield return SolidReadingKind.PointToPlane;
                else if (Lean(a, b) < 0.3) yield return SolidReadingKind.NearSideToPlane;
                break;
            case SolidKind.Point or SolidKind.Hole when a < b:
                if (!hole && _layout.Kind(b) == SolidKind.Point) yield return SolidReadingKind.Distance;
                else if (hole && _layout.Kind(b) == SolidKind.Hole && _layout.On(a) == _layout.On(b)) yield return SolidReadingKind.OverHoles;
                else if (_layout.On(hole ? a : b) is >= 0 and var face && _on.Contains((hole ? b : a, face))) yield return SolidReadingKind.BetweenHoles;
                break;
        }
    }

    IEnumerable<SolidReadingKind> OfFaces(int a, int b)
    {
        if (_layout.Kind(b) != SolidKind.Plane) yield break;
        var lean = Lean(a, b);
        if (lean < 0.98) yield return SolidReadingKind.Angle;
        else if (lean > 0.999) yield return SolidReadingKind.Thickness;
    }

    double Lean(int a, int b) => _layout.HasDirection(a) ? Math.Abs(_layout.Direction(a, _x).Dot(_layout.Direction(b, _x))) : 0;
}
