using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// Cuts notches into the faces of a tree wherever a bend ends beside metal that goes on along it. The bends stay where they are.
/// </summary>
static class ReliefNotches
{
    /// <summary>A side that leaves the bend line by less than this from a bend's end keeps metal beside the bend that would tear (common practice).</summary>
    const double Shallow = Math.PI / 4;

    public static (FaceTree Tree, ImmutableArray<Caution> Cautions) Cut(FaceTree tree, Relief relief)
    {
        if (relief.Width <= 0) return (tree, []);
        var cautions = ImmutableArray.CreateBuilder<Caution>();
        var leaving = tree.Joints.ToLookup(j => j.Parent);
        var cut = tree.WithOutlines([.. tree.Faces.Select((_, i) => Notched(tree, i, leaving[i], relief, cautions))]);
        if (cut.Ok) return (cut.Value, cautions.ToImmutable());
        // A notch ran into a hole, another notch or another bend: leave the part as it was and say so.
        cautions.Clear();
        cautions.Add(new(CautionKind.ReliefNotDrawn, $"Reliefs of {relief.Width:0.##} by {relief.Depth:0.##} mm do not fit this part ({cut.Refusal!.Sentence.TrimEnd('.')}); none is drawn.", []));
        return (tree, cautions.ToImmutable());
    }

    static Loop Notched(FaceTree tree, int face, IEnumerable<Joint> leaving, Relief relief, ImmutableArray<Caution>.Builder cautions)
    {
        var loop = tree.Faces[face].Outline;
        var ends = BendEnds(tree, face, leaving).Where(end => BesideMetal(loop, end)).ToList();
        if (ends.Count == 0) return loop;
        var outline = new NotchedOutline(loop);
        foreach (var atBend in ends.GroupBy(e => e.Bend))
        {
            var drawn = atBend.Count(end => outline.TryNotch(end, relief));
            var bend = tree.Bends[atBend.Key];
            cautions.AddRange(Told($"{bend.Parent}-{bend.Child}", tree.Faces[face].Id, drawn, atBend.Count() - drawn, relief));
        }
        return outline.ToLoop();
    }

    static IEnumerable<Caution> Told(string bend, string face, int drawn, int missing, Relief relief)
    {
        static string Ends(int n) => n == 1 ? "one end" : "both ends";
        if (drawn > 0)
            yield return new(CautionKind.ReliefDrawn, $"Bend {bend} is relieved at {Ends(drawn)} in face {face}: {relief.Width:0.##} mm wide, {relief.Depth:0.##} mm past the tangent line.", [bend], relief.Width, relief.Width);
        if (missing > 0)
            yield return new(CautionKind.ReliefNotDrawn, $"Bend {bend} needs a relief at {Ends(missing)} in face {face}, but the metal beside it has no room for one {relief.Width:0.##} mm wide: cut it back in the drawing.", [bend], double.NaN, relief.Width);
    }

    static IEnumerable<BendEnd> BendEnds(FaceTree tree, int face, IEnumerable<Joint> leaving)
    {
        foreach (var j in leaving)
        {
            var b = tree.Bends[j.Bend];
            yield return new(j.Bend, j.Side, b.From, -b.Along, b.Out, AtStart: true);
            yield return new(j.Bend, j.Side, b.To, b.Along, b.Out, AtStart: false);
        }
        if (face == 0) yield break;
        var own = tree.Bends[face - 1];
        var side = tree.Joints[face - 1].ChildSide;
        yield return new(face - 1, side, Vec2.Zero, new(-1, 0), new(0, -1), AtStart: true);
        yield return new(face - 1, side, new(own.Length, 0), new(1, 0), new(0, -1), AtStart: false);
    }

    /// <summary>Does the outline beyond the bend's end run on beside the bend (a shoulder), or turn away from it (a corner)?</summary>
    static bool BesideMetal(Loop loop, BendEnd end)
    {
        var corner = end.AtStart ? loop.Start(end.Side) : loop.End(end.Side);
        if (corner.DistanceTo(end.At) > FaceTree.OnSide) return true;
        var n = loop.Count;
        var next = end.AtStart ? loop.Start((end.Side + n - 1) % n) : loop.End((end.Side + 1) % n);
        var away = (next - corner).Unit;
        // Angle of the neighbouring side past the bend line's own direction, towards the outside positive.
        return Math.Atan2(away.Dot(end.Out), away.Dot(end.Beyond)) > -Shallow && away.Dot(end.Beyond) > -1e-9;
    }
}

/// <param name="At">The end of the bend on this face's tangent line.</param>
/// <param name="Beyond">Along the bend line, away from the bend.</param>
/// <param name="Out">Square to it, off the face.</param>
/// <param name="AtStart">The end met first when walking the face anticlockwise.</param>
readonly record struct BendEnd(int Bend, int Side, Vec2 At, Vec2 Beyond, Vec2 Out, bool AtStart);
