using System.Collections.Immutable;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>Walks round the flat tree: along a face's sides, out over each bend strip, round the child, and back.</summary>
sealed class OutlineWalk
{
    /// <summary>Corners nearer than this are one, mm.</summary>
    const double Same = 1e-9;

    readonly FaceTree _tree;
    readonly ImmutableArray<Pose2> _poses;
    readonly ImmutableArray<BendAllowance> _allowances;
    readonly double _cornerRadius;
    readonly ILookup<(int Face, int Side), Joint> _onSide;
    readonly List<Corner> _corners = [];
    readonly ImmutableArray<Caution>.Builder _cautions = ImmutableArray.CreateBuilder<Caution>();
    double _bitten;

    OutlineWalk(FaceTree tree, ImmutableArray<Pose2> poses, ImmutableArray<BendAllowance> allowances, double cornerRadius)
    {
        (_tree, _poses, _allowances, _cornerRadius) = (tree, poses, allowances, cornerRadius);
        _onSide = tree.Joints.OrderBy(j => j.Start).ToLookup(j => (j.Parent, j.Side));
    }

    public static (Loop Outline, double Bitten, ImmutableArray<Caution> Cautions) Round(
        FaceTree tree, ImmutableArray<Pose2> poses, ImmutableArray<BendAllowance> allowances, double cornerRadius)
    {
        var walk = new OutlineWalk(tree, poses, allowances, cornerRadius);
        for (var side = 0; side < tree.Faces[0].Outline.Count; side++) walk.Side(0, side);
        var corners = walk._corners;
        if (corners.Count > 1 && corners[^1].At.DistanceTo(corners[0].At) <= Same) corners.RemoveAt(corners.Count - 1);
        return (new Loop([.. corners]), walk._bitten, walk._cautions.ToImmutable());
    }

    void Side(int face, int side)
    {
        var joints = _onSide[(face, side)];
        // A corner with a round relief is bitten away.
        if (!joints.Any(j => j.Start <= FaceTree.OnSide && CornerBite(j, atStart: true) > 0)) Add(face, _tree.Faces[face].Outline.Corners[side]);
        foreach (var joint in joints) Over(joint);
    }

    void Over(Joint joint)
    {
        var bend = _tree.Bends[joint.Bend];
        var reach = bend.Out * _allowances[joint.Bend].Length;
        if (CornerBite(joint, atStart: true) == 0) Add(joint.Parent, new(bend.From));
        Add(joint.Parent, new(bend.From + reach));
        var outline = _tree.Faces[joint.Child].Outline;
        for (var k = 1; k <= outline.Count; k++)
        {
            var side = (joint.ChildSide + k) % outline.Count;
            if (k < outline.Count) Side(joint.Child, side);
            else Add(joint.Child, outline.Corners[side]);
        }
        Add(joint.Parent, new(bend.To + reach));
        Bite(joint, bend);
    }

    /// <summary>Ends the bend at its corner; where the next bend begins there too, a round relief bites both strips and the face.</summary>
    void Bite(Joint joint, Bend bend)
    {
        var radius = CornerBite(joint, atStart: false);
        if (radius == 0)
        {
            Add(joint.Parent, new(bend.To));
            return;
        }
        var next = _tree.Bends[Meeting(joint, atStart: false)!.Value.Bend];
        // Metal angle round the corner: all but the gap between the two strips.
        var sweep = 2 * Math.PI - Math.Acos(Math.Clamp(bend.Out.Dot(next.Out), -1, 1));
        Add(joint.Parent, new(bend.To + bend.Out * radius, -Math.Tan(sweep / 4)));
        Add(joint.Parent, new(bend.To + next.Out * radius));
        _bitten += radius * radius * sweep / 2;
        string[] about = [$"{bend.Parent}-{bend.Child}", $"{next.Parent}-{next.Child}"];
        _cautions.Add(new(CautionKind.ReliefDrawn, $"Bends {about[0]} and {about[1]} meet at a corner: drill {2 * radius:0.##} mm there before folding.", [.. about], radius, radius));
    }

    /// <summary>Radius of the relief at a bend's end; 0 when no other bend meets it there in an outward corner, or it does not fit.</summary>
    double CornerBite(Joint joint, bool atStart)
    {
        if (_cornerRadius == 0 || Meeting(joint, atStart) is not { } other) return 0;
        var (a, b) = (_tree.Bends[joint.Bend], _tree.Bends[other.Bend]);
        var turn = atStart ? b.Out.Cross(a.Out) : a.Out.Cross(b.Out);
        var room = Math.Min(Math.Min(_allowances[joint.Bend].Length, _allowances[other.Bend].Length), Math.Min(a.Length, b.Length) / 2);
        return turn > 1e-6 && room > _cornerRadius ? _cornerRadius : 0;
    }

    Joint? Meeting(Joint joint, bool atStart)
    {
        var bend = _tree.Bends[joint.Bend];
        var count = _tree.Faces[joint.Parent].Outline.Count;
        var side = (joint.Side + (atStart ? count - 1 : 1)) % count;
        foreach (var other in _onSide[(joint.Parent, side)])
        {
            var its = _tree.Bends[other.Bend];
            if ((atStart ? its.To.DistanceTo(bend.From) : its.From.DistanceTo(bend.To)) <= FaceTree.OnSide) return other;
        }
        return null;
    }

    void Add(int face, Corner corner)
    {
        var at = _poses[face].Map(corner.At);
        if (_corners.Count > 0 && _corners[^1].At.DistanceTo(at) <= Same) _corners[^1] = new(_corners[^1].At, corner.Bulge);
        else _corners.Add(new(at, corner.Bulge));
    }
}
