using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// Folds a blank up again from the blank alone. It validates <see cref="Develop"/> and <see cref="Fold"/> by another road: whole
/// rigid motions of the flat, each a pull back over the strip and a turn about the bend's axis, no frames handed down.
/// </summary>
public static class Refold
{
    /// <summary>For each face by id, its corners in space at mid-thickness, mm, root in the xy plane.</summary>
    public static ImmutableDictionary<string, ImmutableArray<Vec3>> Points(Blank blank)
    {
        var motions = Motions(blank);
        return blank.Faces.ToImmutableDictionary(f => f.Id,
            f => f.Outline.Corners.Select(c => motions[f.Id].Map(new Vec3(c.At.X, c.At.Y, 0))).ToImmutableArray());
    }

    /// <summary>For each face by id, the motion that takes it from the blank to its place.</summary>
    public static ImmutableDictionary<string, Motion3> Motions(Blank blank)
    {
        var motions = ImmutableDictionary.CreateBuilder<string, Motion3>();
        motions.Add(blank.Faces[0].Id, Motion3.Identity);
        foreach (var line in blank.BendLines) motions.Add(line.Child, motions[line.Parent].After(Made(line, blank.Thickness)));
        return motions.ToImmutable();
    }

    static Motion3 Made(BendLine line, double thickness)
    {
        var back = new Vec3(line.Out.X, line.Out.Y, 0) * -line.Allowance.Length;
        // The axis lies over the near tangent line on the hollow side.
        var height = Math.Sign(line.Angle) * (line.InsideRadius + thickness / 2);
        var along = (line.To - line.From).Unit;
        // A right-handed turn about From → To lifts what lies to its left; the child lies to its right.
        var lift = line.Angle * Math.Sign(along.Cross(line.Out));
        return Motion3.About(new(line.From.X, line.From.Y, height), new(along.X, along.Y, 0), lift).After(Motion3.Shift(back));
    }
}
