using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// Face tree to blank. Faces keep their size (they lie between tangent lines and are not stretched); each bend becomes a strip as
/// long as its allowance. The outline is one walk round the tree, so no polygon is cut or joined and arcs stay arcs.
/// </summary>
public static class Develop
{
    /// <param name="relief">Null takes <see cref="Relief.Usual"/>.</param>
    /// <returns>The blank with its cautions, or why the method has no allowance for one of the bends.</returns>
    public static Parsed<Blank> Blank(FaceTree tree, BendMethod method, Relief? relief = null)
    {
        var allowances = ImmutableArray.CreateBuilder<BendAllowance>(tree.Bends.Length);
        foreach (var b in tree.Bends)
        {
            var allowance = method.For(b.Angle, b.InsideRadius, tree.Thickness);
            if (!allowance.Ok) return new Refusal($"bend {b.Parent} to {b.Child}, {allowance.Refusal!.Sentence}");
            allowances.Add(allowance.Value);
        }
        var rule = relief ?? Relief.Usual(tree.Thickness);
        var (cut, cautions) = ReliefNotches.Cut(tree, rule);
        return Lay(cut, allowances.MoveToImmutable(), rule.CornerRadius, cautions);
    }

    static Blank Lay(FaceTree tree, ImmutableArray<BendAllowance> allowances, double cornerRadius, ImmutableArray<Caution> reliefCautions)
    {
        var poses = Poses(tree, allowances);
        var lines = tree.Bends.Select((b, i) => Line(tree, poses, i, allowances[i])).ToImmutableArray();
        var (outline, bitten, cornerCautions) = OutlineWalk.Round(tree, poses, allowances, cornerRadius);
        var faces = tree.Faces.Select((f, i) => new BlankFace(f.Id, f.Outline.Moved(poses[i]), [.. f.Openings.Select(o => o.Moved(poses[i]))], poses[i]));
        return new Blank(tree.Title, tree.Thickness, outline, [.. faces], lines, bitten,
            [.. AllowanceCautions(lines), .. reliefCautions, .. cornerCautions, .. Overlap.Of(outline)]);
    }

    internal static ImmutableArray<Pose2> Poses(FaceTree tree, ImmutableArray<BendAllowance> allowances)
    {
        var poses = ImmutableArray.CreateBuilder<Pose2>(tree.Faces.Length);
        poses.Add(Pose2.Identity);
        foreach (var j in tree.Joints)
        {
            var (b, parent) = (tree.Bends[j.Bend], poses[j.Parent]);
            poses.Add(new(parent.Map(b.To + b.Out * allowances[j.Bend].Length), -parent.Turn(b.Along)));
        }
        return poses.MoveToImmutable();
    }

    static BendLine Line(FaceTree tree, ImmutableArray<Pose2> poses, int i, BendAllowance allowance)
    {
        var (b, pose) = (tree.Bends[i], poses[tree.Joints[i].Parent]);
        return new(b.Parent, b.Child, pose.Map(b.From), pose.Map(b.To), pose.Turn(b.Out), b.Angle, b.InsideRadius, allowance);
    }

    static IEnumerable<Caution> AllowanceCautions(ImmutableArray<BendLine> lines) =>
        from line in lines
        from words in line.Allowance.Cautions
        select new Caution(CautionKind.AllowanceRange, $"Bend {line.Id}: {words}.", [line.Id]);
}
