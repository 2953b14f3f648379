using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// One written face with the sides that carry bends moved in to their tangent lines. A side that a bend takes only in part is split
/// there, so the rest of it stays where it was written, a step beyond the tangent line.
/// </summary>
sealed class TangentCut
{
    readonly Bracket _bracket;
    readonly WrittenFace _face;
    readonly List<Piece> _pieces = [];

    public TangentCut(Bracket bracket, WrittenFace face)
    {
        (_bracket, _face) = (bracket, face);
        for (var side = 1; side <= face.Corners.Length; side++) Split(side);
    }

    double Setback(WrittenBend b) => _bracket.MeasuredTo switch
    {
        MeasuredTo.Outside => Sheetwork.Setback.Outside(b.AngleDegrees * Math.PI / 180, b.InsideRadius, _bracket.Thickness),
        MeasuredTo.Inside => Sheetwork.Setback.Inside(b.AngleDegrees * Math.PI / 180, b.InsideRadius),
        _ => 0,
    };

    WrittenBend? Own => _bracket.Bends.FirstOrDefault(b => b.Child == _face.Id);

    Vec2 Corner(int i) => _face.Corners[i % _face.Corners.Length].At;

    void Split(int side)
    {
        var (a, b) = (Corner(side - 1), Corner(side));
        var (length, along) = (a.DistanceTo(b), (b - a).Unit);
        var (at, radius) = (0.0, _face.Corners[side - 1].Radius);
        foreach (var (start, end, setback, bend) in OnSide(side, a, length).OrderBy(x => x.Start))
        {
            if (start > at + FaceTree.OnSide)
            {
                _pieces.Add(new(a + along * at, along, 0, radius, null));
                radius = 0;
            }
            _pieces.Add(new(a + along * start, along, setback, radius, bend));
            (radius, at) = (0, end);
        }
        if (at < length - FaceTree.OnSide) _pieces.Add(new(a + along * at, along, 0, radius, null));
    }

    IEnumerable<(double Start, double End, double Setback, WrittenBend Bend)> OnSide(int side, Vec2 a, double length)
    {
        foreach (var b in _bracket.Bends)
            if (b.Parent == _face.Id && b.Side == side) yield return (b.Start ?? 0, Math.Min(b.End ?? length, length), Setback(b), b);
        // The face's own bend takes the whole of its bottom side: a bottom wider than the bend stands clear beside it.
        if (Own is { } own && Math.Abs(a.Y) <= FaceTree.OnSide && Math.Abs(Corner(side).Y) <= FaceTree.OnSide && Corner(side).X > a.X)
            yield return (0, length, Setback(own), own);
    }

    /// <param name="shift">From the written frame to the face's own.</param>
    public Parsed<Loop> Outline(Vec2 shift)
    {
        var (points, radii) = (new List<Vec2>(), new List<double>());
        for (var i = 0; i < _pieces.Count; i++)
        {
            var (before, here) = (_pieces[(i + _pieces.Count - 1) % _pieces.Count], _pieces[i]);
            if (here.Radius > 0 && (before.Bend ?? here.Bend) is not null)
                return Refusal.Of($"face {_face.Id}, corner", $"radius {here.Radius:0.###}", "a corner at the end of a bend cannot be rounded");
            foreach (var p in Joint(before, here)) Add(points, radii, p + shift, here.Radius);
        }
        if (points.Count < 3) return Refusal.Of($"face {_face.Id}, outline", $"{points.Count} corners", "give at least three corners");
        if (Collapsed(points) is { } refusal) return refusal;
        var loop = Fillet.Round(points.ToArray(), radii.ToArray());
        return loop.Ok ? loop : new Refusal($"face {_face.Id}, {loop.Refusal!.Sentence}");
    }

    Refusal? Collapsed(List<Vec2> points)
    {
        var written = Plane2.SignedArea(_face.Corners.Select(c => c.At).ToArray());
        var left = Plane2.SignedArea(points.ToArray());
        return written > 0 && left <= 0 || Crossings.Of(points.ToArray(), 1).Length > 0 && Crossings.Of(_face.Corners.Select(c => c.At).ToArray(), 1).Length == 0
            ? Refusal.Of($"face {_face.Id}", "its size", "the bends' setbacks leave no flat between them; the face is too short for its radius and thickness")
            : null;
    }

    static void Add(List<Vec2> points, List<double> radii, Vec2 p, double radius)
    {
        if (points.Count > 0 && points[^1].DistanceTo(p) <= 1e-9) return;
        points.Add(p);
        radii.Add(radius);
    }

    /// <summary>Where the piece before meets this one: one corner, or two where a straight side steps.</summary>
    static ImmutableArray<Vec2> Joint(Piece before, Piece here)
    {
        if (Plane2.Meet(before.Line, before.Along, here.Line, here.Along) is { } corner && Math.Abs(before.Along.Cross(here.Along)) > 1e-9) return [corner];
        return before.Offset == here.Offset ? [here.Line] : [here.Start + here.Along.Left * before.Offset, here.Line];
    }

    /// <summary>Ends of a bend on this face, in the frame as written.</summary>
    public (Vec2 From, Vec2 To) Line(WrittenBend bend)
    {
        var i = _pieces.FindIndex(p => ReferenceEquals(p.Bend, bend));
        var (before, here, after) = (_pieces[(i + _pieces.Count - 1) % _pieces.Count], _pieces[i], _pieces[(i + 1) % _pieces.Count]);
        return (Joint(before, here)[^1], Joint(here, after)[0]);
    }

    /// <summary>From the written frame to the face's own: the bend's tangent line onto the x axis, its end on the parent to x = 0.</summary>
    /// <param name="parent">Null for the root, which stays as written.</param>
    public Vec2 ShiftOn(TangentCut? parent)
    {
        if (Own is not { } own || parent is null) return Vec2.Zero;
        // x = 0 is written at the bend's end on the parent as measured; the tangent line there may end short of it.
        var (a, b) = (parent.Corner(own.Side - 1), parent.Corner(own.Side));
        var written = own.End is { } end ? a + (b - a).Unit * Math.Min(end, a.DistanceTo(b)) : b;
        return new(-(written - parent.Line(own).To).Dot((b - a).Unit), -Setback(own));
    }

    /// <param name="Start">Where the piece begins as written.</param>
    /// <param name="Offset">How far it moves in, mm.</param>
    /// <param name="Radius">Of the corner at its start.</param>
    readonly record struct Piece(Vec2 Start, Vec2 Along, double Offset, double Radius, WrittenBend? Bend)
    {
        public Vec2 Line => Start + Along.Left * Offset;
    }
}
