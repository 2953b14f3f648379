using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>What is cut, as marks at true size.</summary>
static class CutMarks
{
    public static IEnumerable<Mark> Of(Opening opening) => opening is RoundHole hole
        ? [new CircleMark(hole.At, hole.Diameter / 2, Layers.Holes, Stroke.Cut)]
        : Of(opening.Edge, Layers.Holes);

    /// <summary>A straight-sided loop is one closed path; with arcs, lines and arcs end to end in order.</summary>
    public static IEnumerable<Mark> Of(Loop loop, string layer)
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
}
