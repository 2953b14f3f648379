using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// From lengths as measured to faces between tangent lines: each side that carries a bend moves in by the bend's setback, sides beside it
/// are lengthened or cut to meet it, and what is written relative to the bend moves with it.
/// </summary>
static class BracketBuilder
{
    public static Parsed<FaceTree> Build(Bracket b)
    {
        if (!(b.Thickness > 0)) return Refusal.Of("thickness", $"{b.Thickness}", "give the sheet's thickness in mm, more than 0");
        if (b.Faces.Length == 0) return Refusal.Of("faces", null, "give at least one face");
        var doubled = b.Faces.GroupBy(f => f.Id).FirstOrDefault(g => g.Count() > 1);
        if (doubled is not null) return Refusal.Of("face", doubled.Key, "this name is used twice; give each face its own");
        foreach (var bend in b.Bends)
            if (Wrong(b, bend) is { } refusal) return refusal;
        var cuts = b.Faces.ToDictionary(f => f.Id, f => new TangentCut(b, f));
        var parentOf = b.Bends.ToDictionary(w => w.Child, w => cuts[w.Parent]);
        var shifts = cuts.ToDictionary(c => c.Key, c => c.Value.ShiftOn(parentOf.GetValueOrDefault(c.Key)));
        var faces = new List<Face>();
        foreach (var written in b.Faces)
        {
            var face = ToFace(written, cuts[written.Id], shifts[written.Id]);
            if (!face.Ok) return face.Refusal!;
            faces.Add(face.Value);
        }
        var bends = b.Bends.Select(w => ToBend(w, cuts[w.Parent], shifts[w.Parent])).ToList();
        return FaceTree.Create(b.Title, b.Thickness, faces, bends);
    }

    static Refusal? Wrong(Bracket b, WrittenBend bend)
    {
        var name = $"bend {bend.Parent} to {bend.Child}";
        var parent = b.Faces.FirstOrDefault(f => f.Id == bend.Parent);
        if (parent is null) return Refusal.Of($"{name}, parent", bend.Parent, "name one of the faces");
        if (b.Faces.All(f => f.Id != bend.Child)) return Refusal.Of($"{name}, child", bend.Child, "name one of the faces");
        if (b.Bends.Count(o => o.Child == bend.Child) > 1) return Refusal.Of($"{name}, child", bend.Child, "a face hangs by one bend only; a closed box needs a seam");
        if (bend.Side < 1 || bend.Side > parent.Corners.Length) return Refusal.Of($"{name}, side", $"{bend.Side}", $"face {parent.Id} has sides 1 to {parent.Corners.Length}");
        if (!(Math.Abs(bend.AngleDegrees) is > 0 and <= 180)) return Refusal.Of($"{name}, angle", $"{bend.AngleDegrees}", "give degrees from flat, up to 180 either way and not 0");
        if (!(bend.InsideRadius >= 0)) return Refusal.Of($"{name}, radius", $"{bend.InsideRadius}", "give the inside radius in mm, 0 or more");
        var length = parent.Corners[bend.Side - 1].At.DistanceTo(parent.Corners[bend.Side % parent.Corners.Length].At);
        var (start, end) = (bend.Start ?? 0, bend.End ?? length);
        if (!(start >= 0 && start < end && end <= length + FaceTree.OnSide))
            return Refusal.Of($"{name}, place", $"{start:0.###} to {end:0.###}", $"it must lie within side {bend.Side}, which is {length:0.###} mm long");
        return null;
    }

    static Parsed<Face> ToFace(WrittenFace written, TangentCut cut, Vec2 shift)
    {
        var outline = cut.Outline(shift);
        if (!outline.Ok) return outline.Refusal!;
        var move = Pose2.Shift(shift);
        var openings = ImmutableArray.CreateBuilder<Opening>();
        foreach (var hole in written.Holes) openings.Add(hole.Moved(move));
        foreach (var c in written.CutOuts)
        {
            var loop = Fillet.Round(c.Corners.Select(k => k.At).ToArray(), c.Corners.Select(k => k.Radius).ToArray());
            if (!loop.Ok) return new Refusal($"face {written.Id}, cut-out {c.Id}, {loop.Refusal!.Sentence}");
            openings.Add(new CutOut(c.Id, loop.Value.Moved(move)));
        }
        return new Face(written.Id, outline.Value, openings.ToImmutable());
    }

    static Bend ToBend(WrittenBend w, TangentCut parent, Vec2 shift)
    {
        var (from, to) = parent.Line(w);
        return new(w.Parent, from + shift, to + shift, w.Child, w.AngleDegrees * Math.PI / 180, w.InsideRadius);
    }
}
