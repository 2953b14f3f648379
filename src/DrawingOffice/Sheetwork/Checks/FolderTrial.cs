using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// Makes one bend in the folder with others already made and looks for faces that run into beam, bed or blade. The machine's frame:
/// x along the bend, y from the clamped face to the flange, z up, origin at mid-thickness on the tangent line.
/// </summary>
sealed class FolderTrial(FaceTree tree, Blank blank, Folder folder)
{
    /// <summary>Contact this deep is not a collision, mm: the clamped sheet touches beam and bed.</summary>
    const double Slack = 0.05;

    const double LargestStep = 7.5 * Math.PI / 180;

    readonly ImmutableArray<ImmutableArray<Vec2>> _outlines = [.. tree.Faces.Select(f => f.Outline.Flatten(0.2))];

    // Balls round the faces, to pass over what is far from a block.
    readonly ImmutableArray<Vec2> _middles = [.. tree.Faces.Select(f => Middle(f.Outline))];
    readonly ImmutableArray<double> _radii = [.. tree.Faces.Select(f => f.Outline.Flatten(0.2).Max(p => p.DistanceTo(Middle(f.Outline))))];

    static Vec2 Middle(Loop outline)
    {
        var corners = outline.Corners;
        return 0.5 * new Vec2(corners.Min(c => c.At.X) + corners.Max(c => c.At.X), corners.Min(c => c.At.Y) + corners.Max(c => c.At.Y));
    }

    /// <param name="made">The bends made before, by index.</param>
    /// <returns>The step, or what is hit whichever face is clamped.</returns>
    public (BendStep? Step, string? Hits) Make(int bend, bool[] made)
    {
        var (joint, b) = (tree.Joints[bend], tree.Bends[bend]);
        string? hits = null;
        foreach (var clamped in new[] { joint.Parent, joint.Child })
        {
            var hit = FirstHit(bend, clamped, made);
            if (hit is null) return (new($"{b.Parent}-{b.Child}", tree.Faces[clamped].Id, b.Angle > 0, b.Angle), null);
            hits = hits is null ? hit : $"{hits}; {hit}";
        }
        return (null, hits);
    }

    /// <summary>Faces tried closely so far.</summary>
    public int Tries { get; private set; }

    string? FirstHit(int bend, int clamped, bool[] made)
    {
        var b = tree.Bends[bend];
        var beyond = Beyond(bend, clamped);
        var steps = (int)Math.Ceiling(Math.Abs(b.Angle) / LargestStep);
        for (var k = 0; k <= steps; k++)
        {
            var share = (double)k / steps;
            var frames = Fold.Frames(tree, i => i == bend ? share : made[i] ? 1 : 0, i => blank.BendLines[i].Allowance.Length);
            var (still, swung) = Machine(bend, clamped, frames);
            // What does not move against a block need be tried only once.
            if (Hit(still, Beam(b.Length), frames, i => k == 0 || beyond[i]) is { } onBeam) return Told(share, onBeam, "the beam");
            if (Hit(still, Bed(), frames, i => k == 0 || beyond[i]) is { } onBed) return Told(share, onBed, "the bed");
            if (Hit(swung, Blade(b.Length), frames, i => k == 0 || !beyond[i]) is { } onBlade) return Told(share, onBlade, "the blade");
        }
        return null;

        string Told(double share, int hit, string what) =>
            $"with {tree.Faces[clamped].Id} clamped, face {tree.Faces[hit].Id} runs into {what} at {share * Math.Abs(b.Angle) * 180 / Math.PI:0}°";
    }

    /// <summary>Which faces swing with the flange.</summary>
    bool[] Beyond(int bend, int clamped)
    {
        var below = new bool[tree.Faces.Length];
        foreach (var j in tree.Joints) below[j.Child] = j.Bend == bend || below[j.Parent];
        return clamped == tree.Joints[bend].Parent ? below : [.. below.Select(x => !x)];
    }

    /// <summary>Frames of the bed and of the blade, which swings with the flange.</summary>
    (Motion3 Still, Motion3 Swung) Machine(int bend, int clamped, ImmutableArray<Motion3> frames)
    {
        var (joint, b) = (tree.Joints[bend], tree.Bends[bend]);
        var up = Math.Sign(b.Angle);
        var (parent, child) = (frames[joint.Parent], frames[joint.Child]);
        // Seen from either face the other one lies outwards; turned over, x runs the other way to stay right-handed.
        var onParent = Facing(parent.Map(up > 0 ? b.To : b.From), parent.Turn(new(b.Out.X, b.Out.Y, 0)), parent.Z * up);
        var onChild = Facing(child.Map(up > 0 ? new Vec2(b.Length, 0) : Vec2.Zero), child.Y * -1, child.Z * up);
        return clamped == joint.Parent ? (onParent, Turned(onChild, b.Length)) : (onChild, Turned(onParent, b.Length));
    }

    static Motion3 Facing(Vec3 origin, Vec3 y, Vec3 z) => new(y.Cross(z), y, z, origin);

    /// <summary>The same plane with y running away from the bend over the flange.</summary>
    static Motion3 Turned(Motion3 f, double length) => new(f.X * -1, f.Y * -1, f.Z, f.Origin + f.X * length);

    int? Hit(Motion3 machine, HalfSpace[] block, ImmutableArray<Motion3> frames, Func<int, bool> concerns)
    {
        for (var i = 0; i < frames.Length; i++)
        {
            if (!concerns(i) || Clear(machine.Local(frames[i].Map(_middles[i])), _radii[i], block)) continue;
            Tries++;
            var local = new Vec3[_outlines[i].Length];
            for (var k = 0; k < local.Length; k++) local[k] = machine.Local(frames[i].Map(_outlines[i][k]));
            if (Clip3.Cut(local, block).Count >= 3) return i;
        }
        return null;
    }

    static bool Clear(Vec3 middle, double radius, HalfSpace[] block)
    {
        foreach (var side in block)
            if (side.Normal.Dot(middle) - radius > side.Limit) return true;
        return false;
    }

    // Blocks are grown by half the sheet's thickness, since faces are tried at mid-thickness.
    double Grown => tree.Thickness / 2 - Slack;

    HalfSpace[] Beam(double length)
    {
        var (s, c) = Math.SinCos(folder.NoseAngle);
        return
        [
            new(new(0, 0, -1), -Slack), new(new(0, 0, 1), folder.BeamHeight + tree.Thickness), new(new(0, -1, 0), folder.BeamDepth + Grown),
            new(new(0, s, c), tree.Thickness / 2 * c + Grown), .. Along(length),
        ];
    }

    // The bed is as deep as the beam and goes down to the bench.
    HalfSpace[] Bed() => [new(new(0, 0, 1), -Slack), new(new(0, -1, 0), folder.BeamDepth + Grown), new(new(0, 1, 0), 0)];

    HalfSpace[] Blade(double length) =>
    [
        new(new(0, 0, 1), -Slack), new(new(0, 0, -1), folder.BladeThickness + tree.Thickness), new(new(0, -1, 0), 0), new(new(0, 1, 0), folder.BladeWidth + Grown),
        .. Along(length),
    ];

    HalfSpace[] Along(double length) => folder.Fingers ? [new(new(-1, 0, 0), -Slack), new(new(1, 0, 0), length - Slack)] : [];
}
