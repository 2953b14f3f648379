namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>A tool that holds two faces at their setting angle while they are tacked.</summary>
/// <param name="Angle">Between the faces, radians in (0, π).</param>
/// <param name="Std">Of it, radians.</param>
/// <param name="Leg">Along each face from the apex, mm.</param>
/// <param name="Width">Along the joint, mm.</param>
/// <param name="ApexRelief">Radius kept clear of bead and bend at the apex, mm.</param>
/// <param name="Hole">Hole of the part that the pin enters; null: no pin.</param>
public sealed record AngleTool(string Name, double Angle, double Std, double Leg, double Width, double ApexRelief, PinHole? Hole);

/// <summary>A hole of the part as the tool sees it.</summary>
/// <param name="Diameter">mm.</param>
/// <param name="FromApex">Along the face, square to the joint, mm.</param>
/// <param name="Along">Along the joint from the tool's near end, mm.</param>
public sealed record PinHole(string Name, double Diameter, double FromApex, double Along);

/// <summary>A locating pin.</summary>
/// <param name="Largest">mm.</param>
/// <param name="Smallest">mm.</param>
/// <param name="Words">Fit and its source.</param>
public sealed record Pin(double Largest, double Smallest, string Words)
{
    public double Nominal => (Largest + Smallest) / 2;
}
