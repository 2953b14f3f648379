namespace WitnessMark.DrawingOffice.Rails;

/// <summary>
/// What hangs on one edge of the web, square to that edge: a fold, a flange, and perhaps a second fold and a lip. Measured from the web's
/// tangent line: out, in the plane of the web away from it, and eye, square to the web towards the eye; both at mid-thickness, mm.
/// </summary>
/// <param name="Towards">1: the flange comes towards the eye; −1: away from it.</param>
/// <param name="LipTurn">1: the lip folds on the same way; −1: back; 0: there is none.</param>
sealed record SideShape(double Angle, int Towards, double LipAngle, int LipTurn, double InsideRadius, double Thickness, double Allowance, double LipAllowance)
{
    double Rho => InsideRadius + Thickness / 2;

    public double Setback => Sheetwork.Setback.Outside(Angle, InsideRadius, Thickness);

    // A brim that folds back is measured from the flange's other side, but the outside of that fold is there too.
    public double LipSetback => LipTurn == 0 ? 0 : Sheetwork.Setback.Outside(LipAngle, InsideRadius, Thickness);

    /// <summary>Flat of the flange between tangent lines, mm.</summary>
    public double Flat(double flange) => flange - Setback - LipSetback;

    public double LipFlat(double lip) => LipTurn == 0 ? 0 : lip - LipSetback;

    /// <summary>From the web's tangent line to the free edge on the flat, mm.</summary>
    public double Developed(double flange, double lip) => Allowance + Flat(flange) + (LipTurn == 0 ? 0 : LipAllowance + LipFlat(lip));

    /// <summary>Where a place of the flat stands once folded, and how far the sheet has turned there from the web, radians.</summary>
    /// <param name="flat">From the web's tangent line, mm; negative within the web.</param>
    /// <param name="flange">Width of the flange there, mm, which is where the second fold comes.</param>
    public (double Out, double Eye, double Turned) At(double flat, double flange)
    {
        if (flat <= 0) return (flat, 0, 0);
        var (o, e, turned) = Arc(0, 0, 0, Angle * Math.Min(1, flat / Allowance));
        flat -= Allowance;
        if (flat <= 0) return (o, e * Towards, turned * Towards);
        var width = LipTurn == 0 ? flat : Math.Min(flat, Flat(flange));
        (o, e) = (o + width * Math.Cos(turned), e + width * Math.Sin(turned));
        flat -= width;
        if (LipTurn == 0 || flat <= 0) return (o, e * Towards, turned * Towards);
        (o, e, turned) = Arc(o, e, turned, LipTurn * LipAngle * Math.Min(1, flat / LipAllowance));
        flat = Math.Max(0, flat - LipAllowance);
        return (o + flat * Math.Cos(turned), (e + flat * Math.Sin(turned)) * Towards, turned * Towards);
    }

    (double Out, double Eye, double Turned) Arc(double o, double e, double from, double by)
    {
        var r = Rho * Math.Sign(by);
        return (o + r * (Math.Sin(from + by) - Math.Sin(from)), e - r * (Math.Cos(from + by) - Math.Cos(from)), from + by);
    }
}
