using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// Cuts notches into the faces of a tree wherever a bend ends beside metal that goes on along it. The bends stay where they are.
/// </summary>
static class ReliefNotches
{
    public static (FaceTree Tree, ImmutableArray<Caution> Cautions) Cut(FaceTree tree, Relief relief)
    {
        if (relief.Width <= 0) return (tree, []);
        var cautions = ImmutableArray.CreateBuilder<Caution>();
        var leaving = tree.Joints.ToLookup(j => j.Parent);
        var cut = tree.WithOutlines([.. tree.Faces.Select((_, i) => Sound(tree, i, leaving[i], relief, cautions))]);
        if (cut.Ok) return (cut.Value, cautions.ToImmutable());
        return (tree, [Misfit("this part", relief, cut.Refusal!.Sentence)]);
    }

    /// <summary>The face's outline with its notches, or as it was where they run into a hole or each other.</summary>
    static Loop Sound(FaceTree tree, int face, IEnumerable<Joint> leaving, Relief relief, ImmutableArray<Caution>.Builder cautions)
    {
        var (before, told) = (tree.Faces[face], ImmutableArray.CreateBuilder<Caution>());
        var outline = Notched(tree, face, leaving, relief, told);
        if (ReferenceEquals(outline, before.Outline)) return outline;
        var why = Soundness.OfFace(before with { Outline = outline })?.Sentence;
        if (BendEnds(tree, face, leaving).Chunk(2).Any(two => Soundness.SideOf(outline, two[0].At, two[1].At) < 0)) why = "one takes metal that another bend hangs on";
        if (why is not null)
        {
            cautions.Add(Misfit($"face {before.Id}", relief, why));
            return before.Outline;
        }
        cautions.AddRange(told);
        return outline;
    }

    static Caution Misfit(string where, Relief relief, string why) => new(CautionKind.ReliefNotDrawn,
        $"Reliefs of {relief.Width:0.##} by {relief.Depth:0.##} mm do not fit {where} ({why.TrimEnd('.')}); none is drawn there.", []);

    static Loop Notched(FaceTree tree, int face, IEnumerable<Joint> leaving, Relief relief, ImmutableArray<Caution>.Builder cautions)
    {
        var loop = tree.Faces[face].Outline;
        var all = BendEnds(tree, face, leaving).ToList();
        // Where another bend begins, the corner between the two gets a round relief instead.
        var ends = all.Where(e => BesideMetal(loop, e, relief) && !all.Any(o => o.Bend != e.Bend && o.At.DistanceTo(e.At) <= FaceTree.OnSide)).ToList();
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

    /// <summary>Start and end of each bend on the face, one after the other.</summary>
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

    /// <summary>
    /// Does the outline beyond the bend's end run on beside the bend (a shoulder), or turn away from it (a corner)? A side that falls
    /// away by the relief's depth within its width has relieved the bend already.
    /// </summary>
    static bool BesideMetal(Loop loop, BendEnd end, Relief relief)
    {
        var corner = end.AtStart ? loop.Start(end.Side) : loop.End(end.Side);
        if (corner.DistanceTo(end.At) > FaceTree.OnSide) return true;
        var n = loop.Count;
        var next = end.AtStart ? loop.Start((end.Side + n - 1) % n) : loop.End((end.Side + 1) % n);
        var away = (next - corner).Unit;
        var (rise, run) = (away.Dot(end.Out), away.Dot(end.Beyond));
        return run > -1e-9 && rise * relief.Width > -run * relief.Depth + 1e-9;
    }
}

/// <param name="At">The end of the bend on this face's tangent line.</param>
/// <param name="Beyond">Along the bend line, away from the bend.</param>
/// <param name="Out">Square to it, off the face.</param>
/// <param name="AtStart">The end met first when walking the face anticlockwise.</param>
readonly record struct BendEnd(int Bend, int Side, Vec2 At, Vec2 Beyond, Vec2 Out, bool AtStart);
