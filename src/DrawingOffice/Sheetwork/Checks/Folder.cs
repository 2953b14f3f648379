namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// A simple sheet folder: bed, clamping beam with a relieved nose, and a blade that lifts the sheet. All mm; measured on the machine.
/// </summary>
/// <param name="Length">Longest bend.</param>
/// <param name="MaxThickness">Of the sheet in hand.</param>
/// <param name="MinFlange">Shortest flange the blade takes, outside.</param>
/// <param name="BeamDepth">From the nose back.</param>
/// <param name="BeamHeight">From the sheet up.</param>
/// <param name="NoseAngle">Between the beam's front and the sheet under it, radians: the beam lets a flange fold to π less this.</param>
/// <param name="BladeWidth">How far under the flange the blade reaches.</param>
/// <param name="BladeThickness">Depth of the blade under the flange.</param>
/// <param name="Fingers">Beam and blade can be made up to the length of a bend (box and pan folder).</param>
public sealed record Folder(double Length, double MaxThickness, double MinFlange, double BeamDepth, double BeamHeight, double NoseAngle,
    double BladeWidth, double BladeThickness, bool Fingers)
{
    /// <summary>A bench folder to start from and edit (common practice; 16 SWG; measure your own).</summary>
    public static Folder Bench { get; } = new(760, 1.63, 10, 60, 45, Math.PI / 4, 25, 15, Fingers: true);
}

/// <summary>How far a metal can be stretched, from a tensile test; per cent. Null where not known.</summary>
public sealed record Ductility(double? ReductionOfArea, double? Elongation);
