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

    string? FirstHit(int bend, int clamped, bool[] made)
    {
        var b = tree.Bends[bend];
        var steps = (int)Math.Ceiling(Math.Abs(b.Angle) / LargestStep);
        for (var k = 0; k <= steps; k++)
        {
            var share = (double)k / steps;
            var frames = Fold.Frames(tree, i => i == bend ? share : made[i] ? 1 : 0, i => blank.BendLines[i].Allowance.Length);
            var (still, swung) = Machine(bend, clamped, frames);
            if (Hit(still, Beam(b.Length), frames) is { } onBeam) return Told(clamped, share, onBeam, "the beam");
            if (Hit(still, Bed(), frames) is { } onBed) return Told(clamped, share, onBed, "the bed");
            if (Hit(swung, Blade(b.Length), frames) is { } onBlade) return Told(clamped, share, onBlade, "the blade");
        }
        return null;

        string Told(int face, double share, int hit, string what) =>
            $"with {tree.Faces[face].Id} clamped, face {tree.Faces[hit].Id} runs into {what} at {share * Math.Abs(b.Angle) * 180 / Math.PI:0}°";
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

    int? Hit(Motion3 machine, HalfSpace[] block, ImmutableArray<Motion3> frames)
    {
        for (var i = 0; i < frames.Length; i++)
        {
            var local = new Vec3[_outlines[i].Length];
            for (var k = 0; k < local.Length; k++) local[k] = machine.Local(frames[i].Map(_outlines[i][k]));
            if (Clip3.Cut(local, block).Count >= 3) return i;
        }
        return null;
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
