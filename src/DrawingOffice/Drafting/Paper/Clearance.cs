using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>
/// What is already on the paper, asked before more lettering goes down. Kept in squares, so that a question looks only at what lies near:
/// a plate with hundreds of holes asks a million of them.
/// </summary>
sealed class Clearance
{
    // Square of the index, mm: about a word wide.
    const double Square = 8;

    readonly Dictionary<(int, int), List<Box>> _boxes = [];
    readonly Dictionary<(int, int), List<Box>> _notes = [];
    readonly Dictionary<(int, int), List<(Vec2 A, Vec2 B)>> _lines = [];
    readonly Dictionary<(int, int), List<(Vec2 Centre, double Radius)>> _discs = [];

    /// <summary>Three letter heights, mm: nearer to each other two notes on a line are read as one.</summary>
    public const double Between = 3 * Letter.Usual;

    /// <summary>What encloses all lettering and lines so far.</summary>
    public Box Bounds { get; private set; } = Box.Nothing;

    public void Block(Box box) => Enter(_boxes, box, box);

    /// <summary>A level note: other lettering on its line keeps <see cref="Between"/> away where there is room.</summary>
    public void Note(Box box)
    {
        Block(box);
        Enter(_notes, box, box);
    }

    public void Line(Vec2 a, Vec2 b)
    {
        foreach (var piece in Pieces(a, b)) Enter(_lines, Box.Round([piece.A, piece.B]), piece);
    }

    /// <summary>A hole: lettering stays off its rim and its inside.</summary>
    public void Disc(Vec2 centre, double radius) => Enter(_discs, Box.Round([centre]).Grown(radius), (centre, radius));

    public void Chain(IReadOnlyList<Vec2> points, bool closed)
    {
        for (var i = 1; i < points.Count; i++) Line(points[i - 1], points[i]);
        if (closed && points.Count > 2) Line(points[^1], points[0]);
    }

    /// <summary>Nothing drawn so far touches the rectangle.</summary>
    public bool Free(Box box)
    {
        foreach (var square in Squares(box))
        {
            if (_boxes.TryGetValue(square, out var boxes) && boxes.Exists(b => b.Overlaps(box))) return false;
            if (_lines.TryGetValue(square, out var lines) && lines.Exists(l => box.Crosses(l.A, l.B))) return false;
            if (_discs.TryGetValue(square, out var discs) && discs.Exists(d => Touches(box, d.Centre, d.Radius))) return false;
        }
        return true;
    }

    /// <summary>No note drawn so far stands on the same line within <see cref="Between"/>.</summary>
    public bool Apart(Box box)
    {
        var wide = box with { Left = box.Left - Between, Right = box.Right + Between };
        return !Squares(wide).Any(square => _notes.TryGetValue(square, out var notes) && notes.Exists(w => w.Overlaps(wide)));
    }

    /// <summary>No lettering drawn so far lies on the line.</summary>
    public bool Passes(Vec2 a, Vec2 b) => !Pieces(a, b).Any(piece => Squares(Box.Round([piece.A, piece.B]))
        .Any(square => _boxes.TryGetValue(square, out var boxes) && boxes.Exists(box => box.Crosses(piece.A, piece.B))));

    void Enter<T>(Dictionary<(int, int), List<T>> index, Box around, T item)
    {
        Bounds = Bounds.With(around);
        foreach (var square in Squares(around))
        {
            if (!index.TryGetValue(square, out var list)) index.Add(square, list = []);
            list.Add(item);
        }
    }

    static IEnumerable<(int, int)> Squares(Box box)
    {
        var (left, right) = ((int)Math.Floor(box.Left / Square), (int)Math.Floor(box.Right / Square));
        var (bottom, top) = ((int)Math.Floor(box.Bottom / Square), (int)Math.Floor(box.Top / Square));
        for (var x = left; x <= right; x++)
        {
            for (var y = bottom; y <= top; y++) yield return (x, y);
        }
    }

    /// <summary>A line cut so short that each piece lies in few squares.</summary>
    static IEnumerable<(Vec2 A, Vec2 B)> Pieces(Vec2 a, Vec2 b)
    {
        var count = Math.Max(1, (int)Math.Ceiling(a.DistanceTo(b) / Square));
        for (var i = 0; i < count; i++) yield return (a + (b - a) * ((double)i / count), a + (b - a) * ((i + 1.0) / count));
    }

    static bool Touches(Box box, Vec2 centre, double radius)
    {
        var nearest = new Vec2(Math.Clamp(centre.X, box.Left, box.Right), Math.Clamp(centre.Y, box.Bottom, box.Top));
        return nearest.DistanceTo(centre) < radius;
    }
}
