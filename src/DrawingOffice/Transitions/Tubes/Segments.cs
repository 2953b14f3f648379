namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>
/// A round bend in straight segments: two half segments at the ends, whole ones between, all mitres alike. Half-angle of a mitre
/// φ = bend / (2 (segments − 1)).
/// </summary>
/// <param name="Bend">Radians.</param>
/// <param name="Radius">Of the bend to the middle of the tube, mm.</param>
public readonly record struct Segments(int Count, double Bend, double Radius)
{
    /// <summary>Largest half-angle when the number is left to choose: five pieces to a quarter turn (common practice).</summary>
    const double Usual = 11.25 * Math.PI / 180;

    public static int Chosen(double bend) => Math.Max(2, 1 + (int)Math.Ceiling(bend / (2 * Usual) - 1e-9));

    /// <summary>φ, radians.</summary>
    public double Mitre => Bend / (2 * (Count - 1));

    /// <summary>Half the length of a whole segment at a tube radius, mm; angle from the throat. An end piece is this long and its tail.</summary>
    public double Half(double radius, double angle) => Math.Tan(Mitre) * (Radius - radius * Math.Cos(angle));

    /// <summary>Rise of the mitre over the throat, mm: tan φ · r (1 − cos θ).</summary>
    public double Rise(double radius, double angle) => Math.Tan(Mitre) * radius * (1 - Math.Cos(angle));

    /// <summary>By which the middle of a segment's ends stands outside the true bend, mm.</summary>
    public double Departure => Radius * (1 / Math.Cos(Mitre) - 1);
}
