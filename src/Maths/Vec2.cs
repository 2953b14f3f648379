namespace WitnessMark.Maths;

/// <summary>A point or a displacement in the plane, mm; x to the right, y up.</summary>
public readonly record struct Vec2(double X, double Y)
{
    public static Vec2 Zero => default;

    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>Turned a quarter turn anticlockwise.</summary>
    public Vec2 Left => new(-Y, X);

    /// <summary>Same direction, length 1. The zero vector has no direction and stays zero.</summary>
    public Vec2 Unit => Length is var n && n > 0 ? new(X / n, Y / n) : this;

    /// <summary>Direction from the x axis, radians in (−π, π].</summary>
    public double Angle => Math.Atan2(Y, X);

    /// <param name="angle">From the x axis, radians.</param>
    /// <param name="length">mm.</param>
    public static Vec2 Polar(double angle, double length = 1) => new(length * Math.Cos(angle), length * Math.Sin(angle));

    public double Dot(Vec2 o) => X * o.X + Y * o.Y;

    /// <summary>Positive when <paramref name="o"/> lies anticlockwise of this.</summary>
    public double Cross(Vec2 o) => X * o.Y - Y * o.X;

    public double DistanceTo(Vec2 o) => (this - o).Length;

    /// <param name="angle">Anticlockwise, radians.</param>
    public Vec2 Turned(double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return new(c * X - s * Y, s * X + c * Y);
    }

    // The record's own would print Left and Unit, which have a Left and a Unit of their own without end.
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"({X:R}, {Y:R})");

    public static Vec2 operator +(Vec2 a, Vec2 b) => new(a.X + b.X, a.Y + b.Y);
    public static Vec2 operator -(Vec2 a, Vec2 b) => new(a.X - b.X, a.Y - b.Y);
    public static Vec2 operator -(Vec2 a) => new(-a.X, -a.Y);
    public static Vec2 operator *(Vec2 a, double k) => new(a.X * k, a.Y * k);
    public static Vec2 operator *(double k, Vec2 a) => a * k;
    public static Vec2 operator /(Vec2 a, double k) => new(a.X / k, a.Y / k);
}
