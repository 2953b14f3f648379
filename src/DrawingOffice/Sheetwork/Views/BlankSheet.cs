using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>The blank at 1:1: outline and openings to cut, bend lines to mark, each bend lettered with its place in the order, angle, way and radius.</summary>
public static class BlankSheet
{
    /// <summary>Letters of 3.5 mm, or 2.5 where a bend is short (ISO 3098-1 heights); a bend too short for either gets its number alone.</summary>
    static readonly double[] Heights = [3.5, 2.5];

    /// <param name="order">Numbers the bends; null numbers them as they stand in the tree.</param>
    /// <param name="margin">Round the blank, mm.</param>
    public static Sheet ToSheet(this Blank blank, BendOrder? order = null, double margin = 10)
    {
        var extent = blank.Outline.Flatten(0.01);
        var (left, low) = (extent.Min(p => p.X), extent.Min(p => p.Y));
        var place = Pose2.Shift(new(margin - left, margin - low));
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.AddRange(CutMarks.Of(blank.Outline.Moved(place), Layers.Outline));
        foreach (var opening in blank.Openings) marks.AddRange(CutMarks.Of(opening.Moved(place)));
        List<ImmutableArray<Vec2>> edges = [.. blank.Openings.Select(o => o.Moved(place).Edge).Prepend(blank.Outline.Moved(place)).Select(l => l.Flatten(0.05))];
        for (var i = 0; i < blank.BendLines.Length; i++) marks.AddRange(Bend(blank.BendLines[i], Number(blank, order, i), place, edges));
        return new(blank.Title, extent.Max(p => p.X) - left + 2 * margin, extent.Max(p => p.Y) - low + 2 * margin, marks.ToImmutable());
    }

    static int Number(Blank blank, BendOrder? order, int i)
    {
        var at = order?.Steps.ToList().FindIndex(s => s.Bend == blank.BendLines[i].Id) ?? -1;
        return (at >= 0 ? at : i) + 1;
    }

    static IEnumerable<Mark> Bend(BendLine line, int number, Pose2 place, List<ImmutableArray<Vec2>> edges)
    {
        yield return new LineMark(place.Map(line.From), place.Map(line.To), Layers.Bends, Stroke.Thin, Tone.Quiet);
        yield return new LineMark(place.Map(line.FarFrom), place.Map(line.FarTo), Layers.Bends, Stroke.Thin, Tone.Quiet);
        yield return new LineMark(place.Map(line.MiddleFrom), place.Map(line.MiddleTo), Layers.Bends, Stroke.Fold);
        var words = $"{number}: {Math.Abs(line.Angle) * 180 / Math.PI:0.#}° {(line.Angle > 0 ? "UP" : "DOWN")} R{line.InsideRadius:0.##}";
        var (text, height) = Fitting(words, $"{number}", line.From.DistanceTo(line.To));
        var spots = Spots(line, text, height, place).ToList();
        yield return spots.FirstOrDefault(spot => Free(spot, edges)) ?? spots[0];
    }

    /// <summary>Where a bend's letters may stand, best first: on the child's side or the parent's, in the middle or towards an end; read from below or from the right.</summary>
    static IEnumerable<TextMark> Spots(BendLine line, string text, double height, Pose2 place)
    {
        var (along, outwards) = (place.Turn(line.To - line.From), place.Turn(line.Out));
        var turn = along.Angle;
        if (turn is > Math.PI / 2 + 1e-9 or <= -Math.PI / 2 + 1e-9) turn += turn > 0 ? -Math.PI : Math.PI;
        var upwards = Vec2.Polar(turn).Left.Dot(outwards) > 0;
        var play = Math.Max(0, along.Length - Lettering.Width(text, height)) / 2 - 1;
        foreach (var shift in new[] { 0, -0.5, 0.5, -1, 1 })
            foreach (var onChild in new[] { true, false })
            {
                // The baseline stands a millimetre off the tangent line, or a letter's height more where the letters hang towards it.
                var off = 1 + (upwards == onChild ? 0 : height);
                var start = onChild ? line.FarFrom + line.Out * off : line.From - line.Out * off;
                yield return new(place.Map(start) + along.Unit * (along.Length / 2 + shift * play), text, height, Layers.Text, Anchor.Middle, turn);
            }
    }

    static bool Free(TextMark text, List<ImmutableArray<Vec2>> edges)
    {
        var (half, up) = (Vec2.Polar(text.Turn, Lettering.Width(text.Text, text.Height) / 2), Vec2.Polar(text.Turn).Left * text.Height);
        Vec2[] box = [text.At - half, text.At + half, text.At + half + up, text.At - half + up];
        foreach (var edge in edges)
            for (int i = 0, j = edge.Length - 1; i < edge.Length; j = i++)
                if (Plane2.Contains(box, edge[i]) || Plane2.Distance(box, edge[j], edge[i]) < 0.5) return false;
        return true;
    }

    static (string Text, double Height) Fitting(string words, string number, double length)
    {
        foreach (var height in Heights)
            if (Lettering.Width(words, height) <= length) return (words, height);
        return (number, Heights[^1]);
    }
}
