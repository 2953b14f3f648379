using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>What a person should look at before cutting; each function returns its cautions, none when all is well.</summary>
public static class Check
{
    /// <summary>All checks. The blank's own cautions (allowance, overlap, reliefs) come first.</summary>
    /// <param name="folder">Null leaves out what depends on the machine.</param>
    /// <param name="metal">Null leaves out the minimum radius.</param>
    public static ImmutableArray<Caution> All(FaceTree tree, Blank blank, Folder? folder = null, Ductility? metal = null)
    {
        var cautions = blank.Cautions.ToBuilder();
        cautions.AddRange(HolesNearBends(tree));
        if (metal is not null) cautions.AddRange(SharpRadii(tree, metal));
        cautions.AddRange(Collide.Of(tree));
        if (folder is null) return cautions.ToImmutable();
        cautions.AddRange(MachineLimits(tree, folder));
        cautions.AddRange(BendOrder.Find(tree, blank, folder).Cautions);
        return cautions.ToImmutable();
    }

    /// <summary>
    /// Openings whose edge is nearer to the inside face of a bend than 2.5 T + R are pulled out of shape (common practice). The inside face
    /// stands off the tangent line by the inside setback.
    /// </summary>
    public static IEnumerable<Caution> HolesNearBends(FaceTree tree)
    {
        foreach (var joint in tree.Joints)
        {
            var b = tree.Bends[joint.Bend];
            var limit = 2.5 * tree.Thickness + b.InsideRadius;
            foreach (var (face, from, to) in new[] { (tree.Faces[joint.Parent], b.From, b.To), (tree.Faces[joint.Child], Vec2.Zero, new Vec2(b.Length, 0)) })
                foreach (var opening in face.Openings)
                {
                    var found = Plane2.Distance(opening.Edge.Flatten(0.01).AsSpan(), from, to) + Setback.Inside(b.Angle, b.InsideRadius);
                    if (found >= limit) continue;
                    yield return new(CautionKind.HoleNearBend,
                        $"Opening {opening.Id} is {found:0.0} mm from the inside of bend {b.Parent}-{b.Child}; nearer than {limit:0.0} mm (2.5 T + R) it is pulled out of shape: drill it after folding or move it.",
                        [opening.Id, $"{b.Parent}-{b.Child}"], found, limit);
                }
        }
    }

    /// <summary>Bends sharper than the metal bears. Both rules are used where both figures are known; the one by elongation is said to be cautious.</summary>
    public static IEnumerable<Caution> SharpRadii(FaceTree tree, Ductility metal)
    {
        foreach (var b in tree.Bends)
        {
            var (limit, why) = metal switch
            {
                { ReductionOfArea: { } r and > 0 } => (MinimumRadius.FromReductionOfArea(r, tree.Thickness), $"a reduction of area of {r:0} %"),
                { Elongation: { } e and > 0 } => (MinimumRadius.FromElongation(e, tree.Thickness), $"an elongation of {e:0} %, a cautious rule: try a strip"),
                _ => (0, ""),
            };
            if (b.InsideRadius < limit)
                yield return new(CautionKind.SharpRadius,
                    $"Bend {b.Parent}-{b.Child} has an inside radius of {b.InsideRadius:0.0} mm; {limit:0.0} mm is the least by {why}. Bend across the grain, anneal if the metal allows it, or open the radius.",
                    [$"{b.Parent}-{b.Child}"], b.InsideRadius, limit);
        }
    }

    /// <summary>Bends too long, sheet too thick, flanges too short for the folder.</summary>
    public static IEnumerable<Caution> MachineLimits(FaceTree tree, Folder folder)
    {
        if (tree.Thickness > folder.MaxThickness)
            yield return new(CautionKind.TooThick, $"The sheet is {tree.Thickness:0.0#} mm; the folder takes {folder.MaxThickness:0.0#} mm.", [], tree.Thickness, folder.MaxThickness);
        foreach (var joint in tree.Joints)
        {
            var b = tree.Bends[joint.Bend];
            var id = $"{b.Parent}-{b.Child}";
            if (b.Length > folder.Length)
                yield return new(CautionKind.TooWide, $"Bend {id} is {b.Length:0} mm long; the folder takes {folder.Length:0} mm.", [id], b.Length, folder.Length);
            var reach = Flange.Reach(tree.Faces[joint.Child].Outline, b.Length) + Setback.Outside(b.Angle, b.InsideRadius, tree.Thickness);
            if (reach < folder.MinFlange)
                yield return new(CautionKind.ShortFlange,
                    $"Flange {b.Child} is {reach:0.0} mm outside; the folder needs {folder.MinFlange:0.0} mm over most of its length: fold it longer and trim, or use the vice.", [b.Child, id], reach, folder.MinFlange);
        }
    }
}
