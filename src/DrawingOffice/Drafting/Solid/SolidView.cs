using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>A length or angle that a view dimensions.</summary>
/// <param name="Number">In the ring beside the figure, from 1.</param>
public sealed record SolidDimension(int Number, string What, string Text, Uncertain? Value, bool IsAngle);

/// <summary>One square view with the dimensions that are seen true in it; mm on paper, the origin of the part at 0, 0.</summary>
sealed class SolidView
{
    /// <summary>An edge lies in the paper when it comes out of it by less than this share of its length: 1 in 5000 of its length is lost.</summary>
    const double InPaper = 0.02;

    // Level or upright within 1°, so that it can be dimensioned beside the view.
    const double Level = 0.0175;

    readonly Board _board = new();
    readonly SolidPart _part;
    readonly Sight _sight;
    readonly Box _shape;

    public SolidView(SolidPart part, Sight sight)
    {
        (_part, _sight) = (part, sight);
        _shape = Box.Round(part.Extent.Select(sight.At));
        foreach (var mark in SolidWires.Draw(part, sight, hide: true)) SolidPicture.Put(_board, mark);
        foreach (var r in part.Rounds) Axis(r);
        foreach (var p in part.Points.Where(p => p.Loose)) Cross(sight.At(p.At));
    }

    public ImmutableArray<Mark> Marks => _board.Marks;

    public Box Bounds => _board.Clear.Bounds.With(_shape);

    public Box Shape => _shape;

    /// <summary>Names of holes and bars that look at the eye here.</summary>
    public void Name(Func<SolidRound, bool> here)
    {
        foreach (var r in _part.Rounds.Where(here)) Leader.Beside(_board, _sight.At(r.Centre), SolidPart.Radius(r) * _sight.Scale, new(r.Id));
    }

    /// <summary>Whether an edge is seen at its true length.</summary>
    public bool IsTrue(SolidLine l) => l is { Loose: false, Length: not null } && Math.Abs((l.B - l.A).Unit.Dot(_sight.Near)) < InPaper;

    /// <summary>Whether two faces are both seen edge-on, so that the angle between them is seen.</summary>
    public bool IsTrue(SolidFace a, SolidFace b) => Math.Abs(a.Normal.Dot(_sight.Near)) < InPaper && Math.Abs(b.Normal.Dot(_sight.Near)) < InPaper;

    /// <summary>Lengths beside the view where they are level or upright, on leaders where they slant.</summary>
    public void Lengths(IEnumerable<(SolidLine Line, SolidDimension Dimension)> lines)
    {
        var (under, left) = (Side.Under(_shape), Side.LeftOf(_shape));
        var all = lines.ToList();
        double[] x = [.. all.Where(l => IsLevel(l.Line)).SelectMany(l => new[] { _sight.At(l.Line.A).X, _sight.At(l.Line.B).X })];
        double[] y = [.. all.Where(l => IsUpright(l.Line)).SelectMany(l => new[] { _sight.At(l.Line.A).Y, _sight.At(l.Line.B).Y })];
        var (across, up) = (new Rows(_board, under, _shape.Left, _shape.Right), new Rows(_board, left, _shape.Bottom, _shape.Top));
        foreach (var (line, dimension) in all.OrderBy(l => l.Line.Length!.Value.Value))
        {
            var (a, b, label) = (_sight.At(line.A), _sight.At(line.B), new Label(dimension.Text, dimension.Number));
            if (IsLevel(line)) across.Place((under.U(a), under.V(a)), (under.U(b), under.V(b)), label, x, mayLift: false);
            else if (IsUpright(line)) up.Place((left.U(a), left.V(a)), (left.U(b), left.V(b)), label, y, mayLift: false);
            else Leader.Beside(_board, (a + b) / 2, 0.8, label);
        }
    }

    /// <summary>An angle between two faces that are seen edge-on.</summary>
    public void Angle(SolidFace a, SolidFace b, SolidDimension dimension)
    {
        if (Crossing(a, b) is not { } apex) return;
        var (toA, toB) = ((_sight.At(a.At) - apex).Unit, (_sight.At(b.At) - apex).Unit);
        var angle = Math.Acos(Math.Clamp(toA.Dot(toB), -1, 1));
        Dimensions.Angles.Draw(_board, new(apex / _sight.Scale, null, null, -toA, toB), angle, _sight.Scale, new(dimension.Text, dimension.Number));
    }

    bool IsLevel(SolidLine l) => Slope(l) is var d && Math.Abs(d.Y) < Level;

    bool IsUpright(SolidLine l) => Slope(l) is var d && Math.Abs(d.X) < Level;

    Vec2 Slope(SolidLine l) => (_sight.At(l.B) - _sight.At(l.A)).Unit;

    // Where the two faces, seen as lines, meet on the paper.
    Vec2? Crossing(SolidFace a, SolidFace b)
    {
        var (n, m) = (Flat(a.Normal), Flat(b.Normal));
        var det = n.Cross(m);
        if (Math.Abs(det) < Level) return null;
        var (p, q) = (n.Dot(_sight.At(a.At)), m.Dot(_sight.At(b.At)));
        return new Vec2(p * m.Y - q * n.Y, n.X * q - m.X * p) / det;
    }

    Vec2 Flat(Vec3 d) => new(_sight.Right.Dot(d), _sight.Up.Dot(d));

    // Centre lines: a cross where the hole looks at the eye, its axis where it is seen from the side.
    void Axis(SolidRound r)
    {
        const double Past = 2.5;
        var (at, reach) = (_sight.At(r.Centre), SolidPart.Radius(r) * _sight.Scale + Past);
        var along = Flat(r.Axis);
        if (along.Length < 0.1)
        {
            foreach (var way in new Vec2[] { new(1, 0), new(0, 1) }) Chain(at - way * reach, at + way * reach);
            return;
        }
        var half = along * (r.Long / 2 * _sight.Scale) + along.Unit * Past;
        Chain(at - half, at + half);
    }

    void Chain(Vec2 a, Vec2 b) => _board.Line(a, b, Layers.Centre, Stroke.Centre);

    void Cross(Vec2 at)
    {
        foreach (var way in new Vec2[] { new(1, 1), new(1, -1) }) _board.Line(at - way, at + way, Layers.Outline, Stroke.Thin, Tone.Warn);
    }
}
