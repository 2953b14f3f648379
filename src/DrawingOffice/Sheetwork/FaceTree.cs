using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// A folded part as faces joined along straight bends, from a root face outwards. Only <see cref="Create"/> makes one, so every
/// tree met elsewhere is sound: each other face hangs by one bend, bends lie on straight sides, openings lie inside their face.
/// </summary>
public sealed record FaceTree
{
    /// <summary>How far a bend end may lie off its side, mm: rounding of typed figures, far under a scribed line.</summary>
    public const double OnSide = 1e-6;

    FaceTree(string title, double thickness, ImmutableArray<Face> faces, ImmutableArray<Bend> bends, ImmutableArray<Joint> joints) =>
        (Title, Thickness, Faces, Bends, Joints) = (title, thickness, faces, bends, joints);

    public string Title { get; }

    /// <summary>mm.</summary>
    public double Thickness { get; }

    /// <summary>The root first, then every face after its parent.</summary>
    public ImmutableArray<Face> Faces { get; }

    /// <summary>Bend i folds on face i + 1.</summary>
    public ImmutableArray<Bend> Bends { get; }

    internal ImmutableArray<Joint> Joints { get; }

    /// <summary>mm; plate beyond this is not folded by these rules.</summary>
    public const double Thickest = 100;

    /// <summary>Most faces accepted; the walk round a blank goes as deep as the tree.</summary>
    public const int MostFaces = 1000;

    /// <param name="faces">The first is the root; the others in any order.</param>
    public static Parsed<FaceTree> Create(string title, double thickness, IReadOnlyList<Face> faces, IReadOnlyList<Bend> bends)
    {
        if (!(thickness is > 0 and <= Thickest))
            return Refusal.Of("thickness", $"{thickness}", $"give the sheet's thickness in mm, more than 0 and at most {Thickest}");
        if (Soundness.OfFaces(faces) is { } badFace) return badFace;
        var order = TreeOrder.Of(faces, bends);
        if (!order.Ok) return order.Refusal!;
        var (sortedFaces, sortedBends, parents) = order.Value;
        return Joined(title, thickness, sortedFaces, sortedBends, parents);
    }

    /// <summary>The same part with other outlines, each found sound before; only where the bends lie on them is looked at again.</summary>
    internal Parsed<FaceTree> WithOutlines(ImmutableArray<Loop> outlines)
    {
        var faces = Faces.Select((f, i) => f with { Outline = outlines[i] });
        return Joined(Title, Thickness, [.. faces], Bends, [.. Joints.Select(j => j.Parent)]);
    }

    static Parsed<FaceTree> Joined(string title, double thickness, ImmutableArray<Face> faces, ImmutableArray<Bend> bends, ImmutableArray<int> parents)
    {
        var joints = ImmutableArray.CreateBuilder<Joint>(bends.Length);
        for (var i = 0; i < bends.Length; i++)
        {
            var joint = Soundness.Join(bends[i], i, parents[i], faces[parents[i]], faces[i + 1]);
            if (!joint.Ok) return joint.Refusal!;
            joints.Add(joint.Value);
        }
        if (Soundness.OfSharedSides(joints, bends, faces) is { } shared) return shared;
        return new FaceTree(title, thickness, faces, bends, joints.MoveToImmutable());
    }
}

/// <summary>Where bend <paramref name="Bend"/> lies: side of the parent, distance from that side's first corner, and the child's side on its x axis.</summary>
readonly record struct Joint(int Bend, int Parent, int Side, double Start, int ChildSide)
{
    public int Child => Bend + 1;
}
