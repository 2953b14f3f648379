using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>The setting tool for one joint of a pressing, sized by its faces and pinned to the hole that lies nearest.</summary>
public static class JointTool
{
    const double Longest = 120;
    const double UsualLeg = 60;
    const double Widest = 40;

    /// <summary>Hollow at the apex: twice the thickness for the root of the bead, a fold's radius and 1 mm, 3 mm at least (common practice).</summary>
    public static double Relief(double thickness, double insideRadius) => Math.Max(Math.Max(2 * thickness, insideRadius + 1), 3);

    /// <returns>Null for a joint so near to flat, or so sharp, that a straightedge or clamps do better.</returns>
    public static AngleTool? Of(FaceModel model, ModelJoint joint)
    {
        var degrees = joint.SettingAngle * 180 / Math.PI;
        if (degrees is < 10 or > 170) return null;
        var relief = Relief(model.Pressing.Thickness, joint.InsideRadius);
        // The tool lies on the inner faces, whose line is this far from the measured one.
        var inside = EdgeSetback.EdgeToEdge(joint.Bend, model.Pressing.Thickness, 0, model.Pressing.PointsOn);
        var width = Math.Clamp(joint.Length * 0.8, 6, Widest);
        var leg = Math.Min(UsualLeg, Math.Min(Depth(model, joint, joint.First), Depth(model, joint, joint.Second)) - inside);
        var hole = Nearest(model, joint, relief, inside, width);
        if (hole is not null) leg = Math.Max(leg, hole.FromApex + hole.Diameter / 2 + 4);
        return new($"{joint.Name} setting tool", joint.SettingAngle, joint.Std, Math.Max(leg, relief + 10), width, relief, hole);
    }

    static PinHole? Nearest(FaceModel model, ModelJoint joint, double relief, double inside, double width)
    {
        PinHole? best = null;
        foreach (var f in new[] { joint.First, joint.Second })
            foreach (var hole in model.Faces[f].Openings.OfType<RoundHole>().Where(h => h.Diameter is > 3 and <= 40 && h.Diameter < width - 2))
            {
                var (far, along) = Place(model, joint, model.Faces[f].Frame.Map(hole.At));
                var fromApex = far - inside;
                if (fromApex - hole.Diameter / 2 <= relief || fromApex + hole.Diameter / 2 + 4 > Longest || along < 0 || along > joint.Length) continue;
                if (best is null || fromApex < best.FromApex) best = new(hole.Id, hole.Diameter, fromApex, width / 2);
            }
        return best;
    }

    /// <summary>Square to the joint, and along it.</summary>
    static (double Far, double Along) Place(FaceModel model, ModelJoint joint, Vec3 at)
    {
        var from = model.Points[joint.From];
        var along = (model.Points[joint.To] - from).Unit;
        var t = (at - from).Dot(along);
        return ((at - from - along * t).Length, t);
    }

    static double Depth(FaceModel model, ModelJoint joint, int face) => model.Faces[face].Ring.Max(i => Place(model, joint, model.Points[i]).Far);
}
