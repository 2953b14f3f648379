using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>
/// The skin between two parallel circles of different size: a cone cut off, upright or leaning. It is laid flat about its point, exactly:
/// an upright one as a sector, a leaning one with the angle at the point summed by quadrature (to 1e-12 of itself).
/// </summary>
/// <param name="Base">Radius at z = 0, mm.</param>
/// <param name="Top">Radius at the height, mm; 0 for a point; not equal to the base.</param>
/// <param name="Offset">Of the top's centre, mm.</param>
public sealed record Cone(double Base, double Top, double Height, Vec2 Offset)
{
    public bool Upright => Offset.Length < 1e-9 * Height;

    /// <summary>Where all elements meet; below the base when the top is the larger.</summary>
    public Vec3 Point => new Vec3(Offset.X, Offset.Y, Height) * (Base / (Base - Top));

    public Vec3 OnBase(double angle) => new(Base * Math.Cos(angle), Base * Math.Sin(angle), 0);

    public Vec3 OnTop(double angle) => new(Offset.X + Top * Math.Cos(angle), Offset.Y + Top * Math.Sin(angle), Height);

    /// <summary>From the point to the base along an element, mm.</summary>
    public double Reach(double angle) => Point.DistanceTo(OnBase(angle));

    /// <summary>Angle at the point, laid flat, between two elements, radians.</summary>
    public double Opening(double from, double to)
    {
        if (Upright) return (to - from) * Base / Reach(0);
        return Quadrature.Over(from, to, t =>
        {
            var (s, c) = Math.SinCos(t);
            var q = OnBase(t) - Point;
            return q.Cross(new(-Base * s, Base * c, 0)).Length / q.Dot(q);
        });
    }

    /// <summary>Sheet in the skin, mm².</summary>
    public double Area => Quadrature.Over(0, Math.Tau, t =>
    {
        var (s, c) = Math.SinCos(t);
        return (OnBase(t) - Point).Cross(new(-Base * s, Base * c, 0)).Length / 2;
    }) * Math.Abs(1 - Top * Top / (Base * Base));

    /// <summary>Elements for a chord error on the larger circle, mm, evenly round; at least one for each 30°.</summary>
    public int Stations(double error)
    {
        var larger = Math.Max(Base, Top);
        return Math.Max(12, (int)Math.Ceiling(Math.Tau / (4 * Math.Asin(Math.Sqrt(Math.Min(1, error / (2 * larger))))) - 1e-9));
    }
}
