using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;

namespace WitnessMark.DrawingOffice.Pieces.Sheets;

/// <summary>Where lettering may stand on a piece: clear of what is cut, of bends and of other letters.</summary>
sealed class LetterRoom
{
    /// <summary>ISO 3098-1 heights, mm, and the clear space round a letter.</summary>
    static readonly double[] s_heights = [3.5, 2.5];

    const double Clear = 0.5;

    readonly List<Vec2[]> _edges;
    readonly List<(Vec2 A, Vec2 B)> _lines;
    readonly List<Vec2[]> _taken = [];
    readonly List<TextMark> _put = [];

    public LetterRoom(Piece piece)
    {
        _edges = [.. piece.Openings.Select(o => o.Edge).Prepend(piece.Outline).Select(l => l.Flatten(0.05).ToArray())];
        _lines = [.. piece.Creases.Select(c => c.Line).Concat(piece.Witnesses.Select(w => w.Line)).SelectMany(l => l.Zip(l.Skip(1)))];
    }

    public List<TextMark> Put() => _put;

    /// <summary>Sets words beside a line where they find room, smaller if need be.</summary>
    /// <param name="off">Kept free on both sides of the line, mm.</param>
    /// <returns>False where there is none.</returns>
    public bool Put(ImmutableArray<Vec2> line, double off, string words)
    {
        if (words.Length == 0 || line.Length == 0) return true;
        foreach (var height in s_heights)
            foreach (var spot in Spots(line, off, words, height))
            {
                var box = Box(spot);
                if (!Free(box)) continue;
                _taken.Add(box);
                _put.Add(spot);
                return true;
            }
        return false;
    }

    /// <summary>On either side of each stretch of the line, in its middle or towards an end, read from below or from the right.</summary>
    static IEnumerable<TextMark> Spots(ImmutableArray<Vec2> line, double off, string words, double height)
    {
        var width = Lettering.Width(words, height);
        IEnumerable<(Vec2, Vec2)> stretches = line.Length == 1 ? [(line[0], line[0] + new Vec2(1e-6, 0))] : line.Zip(line.Skip(1)).OrderByDescending(s => s.First.DistanceTo(s.Second)).Take(3);
        foreach (var (a, b) in stretches)
        {
            var along = (b - a).Unit;
            if (along.X < -1e-9 || along.X < 1e-9 && along.Y < 0) along = -along;
            var play = line.Length == 1 ? width / 2 + 3 : Math.Max(0, a.DistanceTo(b) - width) / 2;
            foreach (var shift in new[] { 0, -0.5, 0.5, -0.9, 0.9 })
                foreach (var above in new[] { true, false })
                    yield return new((a + b) / 2 + along * (shift * play) + along.Left * (above ? off + 1 : -off - 1 - height), words, height, Layers.Text, Anchor.Middle, along.Angle);
        }
    }

    static Vec2[] Box(TextMark text)
    {
        var (half, up) = (Vec2.Polar(text.Turn, Lettering.Width(text.Text, text.Height) / 2), Vec2.Polar(text.Turn).Left * text.Height);
        return [text.At - half, text.At + half, text.At + half + up, text.At - half + up];
    }

    bool Free(Vec2[] box)
    {
        var middle = (box[0] + box[2]) / 2;
        var reach = box[0].DistanceTo(box[2]) / 2 + Clear;
        if (!Plane2.Contains(_edges[0], middle)) return false;
        foreach (var edge in _edges)
            for (int i = 0, j = edge.Length - 1; i < edge.Length; j = i++)
                if (Meets(edge[j], edge[i])) return false;
        foreach (var (a, b) in _lines)
            if (Meets(a, b)) return false;
        foreach (var taken in _taken)
            for (int i = 0, j = 3; i < 4; j = i++)
                if (Meets(taken[j], taken[i])) return false;
        return true;

        bool Meets(Vec2 a, Vec2 b) => Plane2.Distance(middle, a, b) <= reach && (Plane2.Contains(box, a) || Plane2.Distance(box, a, b) < Clear);
    }
}
