using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// Where the faces of a tree stand in space when folded. Each frame's xy plane is the middle of the sheet; z points to the upper side.
/// The root stands in the xy plane.
/// </summary>
public static class Fold
{
    /// <summary>All bends made.</summary>
    public static ImmutableArray<Motion3> Frames(FaceTree tree) => Frames(tree, _ => 1, _ => 0);

    /// <summary>Bends made in part.</summary>
    /// <param name="done">Share of bend i made, 0 to 1.</param>
    /// <param name="allowance">Flat length of bend i, mm; the share not yet made lies flat beyond the arc.</param>
    public static ImmutableArray<Motion3> Frames(FaceTree tree, Func<int, double> done, Func<int, double> allowance)
    {
        var frames = ImmutableArray.CreateBuilder<Motion3>(tree.Faces.Length);
        frames.Add(Motion3.Identity);
        foreach (var j in tree.Joints)
            frames.Add(frames[j.Parent].After(Across(tree.Bends[j.Bend], tree.Thickness, done(j.Bend), allowance(j.Bend))));
        return frames.MoveToImmutable();
    }

    /// <summary>The child's frame in its parent's.</summary>
    static Motion3 Across(Bend b, double thickness, double done, double allowance)
    {
        var turn = b.Angle * done;
        var (s, c) = Math.SinCos(turn);
        var rho = b.InsideRadius + thickness / 2;
        var (along, across) = (new Vec3(b.Along.X, b.Along.Y, 0), new Vec3(b.Out.X, b.Out.Y, 0));
        var up = new Vec3(0, 0, 1);
        var y = across * c + up * s;
        var origin = new Vec3(b.To.X, b.To.Y, 0)
            + across * (rho * Math.Abs(s)) + up * (Math.Sign(b.Angle) * rho * (1 - c)) + y * (allowance * (1 - done));
        return new(along * -1, y, across * -s + up * c, origin);
    }

    /// <summary>Volume of metal in the folded part, mm³, exact: faces by their thickness, bends as parts of a ring.</summary>
    public static double Volume(FaceTree tree)
    {
        var t = tree.Thickness;
        // A bend's ring has its centroid at mid-thickness (Pappus).
        return tree.Faces.Sum(f => f.Area) * t + tree.Bends.Sum(b => b.Length * t * Math.Abs(b.Angle) * (b.InsideRadius + t / 2));
    }
}
