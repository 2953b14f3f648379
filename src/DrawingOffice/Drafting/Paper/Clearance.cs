using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>What is already on the paper, asked before more lettering goes down. Plain search: a drawing has a few hundred marks.</summary>
sealed class Clearance
{
    readonly List<Box> _boxes = [];
    readonly List<(Vec2 A, Vec2 B)> _lines = [];
    readonly List<(Vec2 Centre, double Radius)> _discs = [];

    public void Block(Box box) => _boxes.Add(box);

    public void Line(Vec2 a, Vec2 b) => _lines.Add((a, b));

    /// <summary>A hole: lettering stays off its rim and its inside.</summary>
    public void Disc(Vec2 centre, double radius) => _discs.Add((centre, radius));

    public void Chain(IReadOnlyList<Vec2> points, bool closed)
    {
        for (var i = 1; i < points.Count; i++) Line(points[i - 1], points[i]);
        if (closed && points.Count > 2) Line(points[^1], points[0]);
    }

    /// <summary>Nothing drawn so far touches the rectangle.</summary>
    public bool Free(Box box) =>
        !_boxes.Exists(b => b.Overlaps(box)) && !_lines.Exists(l => box.Crosses(l.A, l.B)) && !_discs.Exists(d => Touches(box, d.Centre, d.Radius));

    /// <summary>No lettering drawn so far lies on the line.</summary>
    public bool Passes(Vec2 a, Vec2 b) => !_boxes.Exists(box => box.Crosses(a, b));

    /// <summary>What encloses all lettering and lines so far.</summary>
    public Box Bounds
    {
        get
        {
            var all = _boxes.Aggregate(Box.Nothing, (sum, b) => sum.With(b));
            all = _lines.Aggregate(all, (sum, l) => sum.With(l.A).With(l.B));
            return _discs.Aggregate(all, (sum, d) => sum.With(new Box(d.Centre.X, d.Centre.Y, d.Centre.X, d.Centre.Y).Grown(d.Radius)));
        }
    }

    static bool Touches(Box box, Vec2 centre, double radius)
    {
        var nearest = new Vec2(Math.Clamp(centre.X, box.Left, box.Right), Math.Clamp(centre.Y, box.Bottom, box.Top));
        return nearest.DistanceTo(centre) < radius;
    }
}
