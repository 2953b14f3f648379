namespace WitnessMark.Maths;

/// <summary>A point or a displacement in space, mm; right-handed.</summary>
public readonly record struct Vec3(double X, double Y, double Z)
{
    public static Vec3 Zero => default;

    public double Length => Math.Sqrt(X * X + Y * Y + Z * Z);

    /// <summary>Same direction, length 1. The zero vector has no direction and stays zero.</summary>
    public Vec3 Unit => Length is var n && n > 0 ? new(X / n, Y / n, Z / n) : this;

    public double Dot(Vec3 o) => X * o.X + Y * o.Y + Z * o.Z;

    public Vec3 Cross(Vec3 o) => new(Y * o.Z - Z * o.Y, Z * o.X - X * o.Z, X * o.Y - Y * o.X);

    public double DistanceTo(Vec3 o) => (this - o).Length;

    // The record's own would print Unit, which has a Unit of its own without end.
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"({X:R}, {Y:R}, {Z:R})");

    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);
    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);
    public static Vec3 operator -(Vec3 a) => new(-a.X, -a.Y, -a.Z);
    public static Vec3 operator *(Vec3 a, double k) => new(a.X * k, a.Y * k, a.Z * k);
    public static Vec3 operator *(double k, Vec3 a) => a * k;
    public static Vec3 operator /(Vec3 a, double k) => new(a.X / k, a.Y / k, a.Z / k);
}
