using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>The blank at 1:1: outline and openings to cut, bend lines to mark, each bend lettered with its place in the order, angle, way and radius.</summary>
public static class BlankSheet
{
    /// <summary>Letters of 3.5 mm, or 2.5 where a bend is short (ISO 3098-1 heights); a bend too short for either gets its number alone.</summary>
    static readonly double[] Heights = [3.5, 2.5];

    /// <summary>Rough width of a letter as a share of its height; only used to choose between the heights.</summary>
    const double LetterWidth = 0.75;

    /// <param name="order">Numbers the bends; null numbers them as they stand in the tree.</param>
    /// <param name="margin">Round the blank, mm.</param>
    public static Sheet ToSheet(this Blank blank, BendOrder? order = null, double margin = 10)
    {
        var extent = blank.Outline.Flatten(0.01);
        var (left, low) = (extent.Min(p => p.X), extent.Min(p => p.Y));
        var place = Pose2.Shift(new(margin - left, margin - low));
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.AddRange(Lines(blank.Outline.Moved(place), Layers.Outline));
        foreach (var opening in blank.Openings) marks.AddRange(Cut(opening.Moved(place)));
        for (var i = 0; i < blank.BendLines.Length; i++) marks.AddRange(Bend(blank.BendLines[i], Number(blank, order, i), place));
        return new(blank.Title, extent.Max(p => p.X) - left + 2 * margin, extent.Max(p => p.Y) - low + 2 * margin, marks.ToImmutable());
    }

    static int Number(Blank blank, BendOrder? order, int i)
    {
        var at = order?.Steps.ToList().FindIndex(s => s.Bend == blank.BendLines[i].Id) ?? -1;
        return (at >= 0 ? at : i) + 1;
    }

    static IEnumerable<Mark> Cut(Opening opening) => opening is RoundHole hole
        ? [new CircleMark(hole.At, hole.Diameter / 2, Layers.Holes, Stroke.Cut)]
        : Lines(opening.Edge, Layers.Holes);

    /// <summary>A straight-sided loop is one closed path; with arcs, lines and arcs end to end in order.</summary>
    static IEnumerable<Mark> Lines(Loop loop, string layer)
    {
        if (Enumerable.Range(0, loop.Count).All(loop.Straight))
        {
            yield return new PathMark([.. loop.Corners.Select(c => c.At)], true, false, layer, Stroke.Cut);
            yield break;
        }
        for (var i = 0; i < loop.Count; i++)
        {
            if (loop.Straight(i))
            {
                yield return new LineMark(loop.Start(i), loop.End(i), layer, Stroke.Cut);
                continue;
            }
            var arc = Arc.Of(loop.Start(i), loop.End(i), loop.Corners[i].Bulge);
            yield return new ArcMark(arc.Centre, arc.Radius, arc.Start, arc.Sweep, layer, Stroke.Cut);
        }
    }

    static IEnumerable<Mark> Bend(BendLine line, int number, Pose2 place)
    {
        yield return new LineMark(place.Map(line.From), place.Map(line.To), Layers.Bends, Stroke.Thin, Tone.Quiet);
        yield return new LineMark(place.Map(line.FarFrom), place.Map(line.FarTo), Layers.Bends, Stroke.Thin, Tone.Quiet);
        yield return new LineMark(place.Map(line.MiddleFrom), place.Map(line.MiddleTo), Layers.Bends, Stroke.Fold);
        var words = $"{number}: {Math.Abs(line.Angle) * 180 / Math.PI:0.#}° {(line.Angle > 0 ? "UP" : "DOWN")} R{line.InsideRadius:0.##}";
        var (text, height) = Fitting(words, $"{number}", line.From.DistanceTo(line.To));
        // Read from below or from the right, the letters standing clear of the strip on the child's side.
        var along = place.Turn(line.To - line.From);
        var turn = along.Angle;
        if (turn is > Math.PI / 2 + 1e-9 or <= -Math.PI / 2 + 1e-9) turn += turn > 0 ? -Math.PI : Math.PI;
        var outwards = place.Turn(line.Out);
        var baseline = Vec2.Polar(turn).Left.Dot(outwards) > 0 ? 1 : 1 + height;
        yield return new TextMark(place.Map(0.5 * (line.FarFrom + line.FarTo)) + outwards * baseline, text, height, Layers.Text, Anchor.Middle, turn);
    }

    static (string Text, double Height) Fitting(string words, string number, double length)
    {
        foreach (var height in Heights)
            if (words.Length * height * LetterWidth <= length) return (words, height);
        return (number, Heights[^1]);
    }
}
