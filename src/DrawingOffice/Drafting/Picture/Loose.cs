using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Picture;

/// <summary>What the readings do not hold: arrows both ways along each free motion, and the second place of what may lie mirrored.</summary>
static class Loose
{
    // Half-length of the longest arrow, mm; shorter ones than Least are not drawn.
    const double Longest = 11, Least = 1.5;

    public static void Draw(Board board, Plan plan, View view)
    {
        var places = plan.Features.ToDictionary(f => f.Id);
        foreach (var arrow in plan.Loose.SelectMany(g => g.Motions).SelectMany(m => m))
        {
            if (!places.TryGetValue(arrow.Id, out var f)) continue;
            Move(board, view.At(f.At), arrow.Move * Longest);
            if (f.Kind == FeatureKind.Hole && Math.Abs(arrow.Grow) * Longest > Least)
                board.Add(new CircleMark(view.At(f.At), (f.Size?.Value ?? 0) / 2 * view.Scale + 2, Layers.Dimensions, Stroke.Hidden, Tone.Warn));
        }
        foreach (var mirror in plan.Mirrors) Flip(board, places, mirror, view);
    }

    static void Move(Board board, Vec2 at, Vec2 half)
    {
        if (half.Length < Least) return;
        board.Line(at - half, at + half, Layers.Dimensions, Stroke.Dimension, Tone.Warn);
        board.Arrow(at + half, half, Layers.Dimensions, Tone.Warn);
        board.Arrow(at - half, -half, Layers.Dimensions, Tone.Warn);
    }

    static void Flip(Board board, Dictionary<string, Placed> places, Mirror mirror, View view)
    {
        if (mirror.About is not [var first, var second] || !places.TryGetValue(first, out var a) || !places.TryGetValue(second, out var b)) return;
        var axis = (b.At - a.At).Unit;
        foreach (var id in mirror.Flips)
        {
            if (!places.TryGetValue(id, out var f)) continue;
            var off = f.At - a.At;
            var image = view.At(a.At + axis * (2 * off.Dot(axis)) - off);
            board.Add(new CircleMark(image, Math.Max(1.5, (f.Size?.Value ?? 0) / 2 * view.Scale), Layers.Hidden, Stroke.Hidden, Tone.Warn));
            board.Clear.Disc(image, Math.Max(1.5, (f.Size?.Value ?? 0) / 2 * view.Scale));
            Leader.Beside(board, image, Math.Max(1.5, (f.Size?.Value ?? 0) / 2 * view.Scale), new($"or {id} here", Tone: Tone.Warn));
        }
    }
}
