namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// How bends are freed at their ends so that the sheet does not tear. All mm; common practice.
/// </summary>
/// <param name="Width">Of a notch beside a bend end.</param>
/// <param name="Depth">Of a notch beyond the tangent line.</param>
/// <param name="CornerRadius">Of the round relief where two bends meet at a corner; 0 draws none.</param>
public sealed record Relief(double Width, double Depth, double CornerRadius)
{
    /// <summary>
    /// Width: the thickness, at least 1 mm (a hacksaw or a cutter's kerf). Depth: half the thickness past the tangent line, at least 0.5 mm.
    /// Corner: radius of the thickness, at least 1.5 mm (a 3 mm drill).
    /// </summary>
    public static Relief Usual(double thickness) => new(Math.Max(thickness, 1), Math.Max(thickness / 2, 0.5), Math.Max(thickness, 1.5));

    public static Relief None => new(0, 0, 0);
}
