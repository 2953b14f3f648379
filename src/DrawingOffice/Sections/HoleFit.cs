using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>Whether the holes of a solid find room in its outline.</summary>
static class HoleFit
{
    /// <summary>Chords stay this near their arcs, mm.</summary>
    const double Chord = 0.01;

    /// <summary>Edges nearer than their chords can tell apart, mm, are taken to touch.</summary>
    const double Touch = 2 * Chord;

    /// <summary>Refuses a hole that is not wholly inside the outline, and one that touches, crosses or lies in another.</summary>
    public static Refusal? Wrong(Loop outline, ImmutableArray<Loop> holes)
    {
        if (holes.IsEmpty) return null;
        var (around, edge) = (Box.Of(outline), outline.Flatten(Chord));
        var before = new List<(Box Box, ImmutableArray<Vec2> Edge)>();
        for (var i = 0; i < holes.Length; i++)
        {
            var box = Box.Of(holes[i]);
            // The box comes first: a hole within it is never so large that its chords are too many.
            if (!box.Within(around)) return Outside(i, box);
            var hole = holes[i].Flatten(Chord);
            if (!Plane2.Contains(edge.AsSpan(), hole[0]) || Touching(edge, hole)) return Outside(i, box);
            for (var k = 0; k < before.Count; k++)
                if (box.Near(before[k].Box)
                    && (Plane2.Contains(before[k].Edge.AsSpan(), hole[0]) || Plane2.Contains(hole.AsSpan(), before[k].Edge[0]) || Touching(before[k].Edge, hole)))
                    return Refusal.Of($"hole {i + 1}", box.Words, $"it runs into hole {k + 1}; move them apart or give both as one hole by its corners");
            before.Add((box, hole));
        }
        return null;
    }

    static Refusal Outside(int hole, Box box) => Refusal.Of($"hole {hole + 1}", box.Words, "a hole must lie wholly inside the solid outline; move it or make it smaller");

    static bool Touching(ImmutableArray<Vec2> a, ImmutableArray<Vec2> b)
    {
        for (var i = 0; i < a.Length; i++)
            for (var k = 0; k < b.Length; k++)
                if (Plane2.Touch(a[i], a[(i + 1) % a.Length], b[k], b[(k + 1) % b.Length], Touch)) return true;
        return false;
    }

    readonly record struct Box(double Left, double Right, double Down, double Up)
    {
        public string Words => $"from {Left:0.##} to {Right:0.##} mm across and {Down:0.##} to {Up:0.##} mm up";

        public static Box Of(Loop loop)
        {
            double Far(Vec2 towards) => Enumerable.Range(0, loop.Count).Max(i => new Side(loop.Start(i), loop.End(i), loop.Corners[i].Bulge).Reach(towards));
            return new(-Far(new(-1, 0)), Far(new(1, 0)), -Far(new(0, -1)), Far(new(0, 1)));
        }

        public bool Within(Box other) => Left > other.Left && Right < other.Right && Down > other.Down && Up < other.Up;

        public bool Near(Box other) => Left <= other.Right + Touch && other.Left <= Right + Touch && Down <= other.Up + Touch && other.Down <= Up + Touch;
    }
}
