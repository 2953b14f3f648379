using WitnessMark.DrawingOffice.Pieces;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>Kind, size and gap of a welded joint of sheet by its angle and thickness (common practice; try a scrap of the same sheet).</summary>
public static class WeldRules
{
    // Nearer to flat than this two edges lie side by side.
    const double Butt = 10 * Math.PI / 180;

    // Sharper between the faces than this no torch reaches inside, nor do edges to edge give room.
    const double Sharp = 60 * Math.PI / 180;

    public static SeamKind Kind(ModelJoint joint, double thickness) =>
        Math.Abs(joint.Bend) < Butt ? SeamKind.Butt : Fit(joint, thickness) == EdgeFit.Lapped ? SeamKind.Fillet : SeamKind.Corner;

    /// <summary>Sheet of 3 mm and more that meets at about a right angle is lapped and filleted outside; thinner meets edge to edge and the corner is filled.</summary>
    public static EdgeFit Fit(ModelJoint joint, double thickness) =>
        thickness >= 3 && Math.Abs(joint.SettingAngle - Math.PI / 2) < Sharp / 2 ? EdgeFit.Lapped : EdgeFit.EdgeToEdge;

    /// <summary>Throat of a butt or corner, leg of a fillet: the sheet's own thickness, mm.</summary>
    public static double Size(double thickness) => thickness;

    /// <summary>Half the thickness for a butt, at most 1.6 mm (1/16 in, as a public welding guide draws a square butt); corners and laps close up. mm.</summary>
    public static double RootGap(ModelJoint joint, double thickness) => Kind(joint, thickness) == SeamKind.Butt ? Math.Min(thickness / 2, 1.6) : 0;

    /// <summary>
    /// How much more work a mm of this weld is than of an open outside corner: butts pull the sheet most and are dressed on both sides (1.5),
    /// sharp joints are hard to reach (1.5), laps take a fillet (1.1).
    /// </summary>
    public static double Awkwardness(ModelJoint joint, double thickness) => Kind(joint, thickness) switch
    {
        SeamKind.Butt => 1.5,
        _ when joint.SettingAngle < Sharp => 1.5,
        SeamKind.Fillet => 1.1,
        _ => 1,
    };
}
