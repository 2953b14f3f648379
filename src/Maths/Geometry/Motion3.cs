namespace WitnessMark.Maths.Geometry;

/// <summary>A rigid motion of space, or a frame: the images of the three axes (length 1, right-handed) and of the origin, mm.</summary>
public readonly record struct Motion3(Vec3 X, Vec3 Y, Vec3 Z, Vec3 Origin)
{
    public static Motion3 Identity => new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), Vec3.Zero);

    public static Motion3 Shift(Vec3 by) => Identity with { Origin = by };

    /// <summary>A turn by <paramref name="angle"/> radians, right-handed, about the line through a point along a direction of length 1.</summary>
    public static Motion3 About(Vec3 point, Vec3 direction, double angle)
    {
        var turn = new Motion3(Spun(new(1, 0, 0), direction, angle), Spun(new(0, 1, 0), direction, angle),
            Spun(new(0, 0, 1), direction, angle), Vec3.Zero);
        return turn with { Origin = point - turn.Map(point) };
    }

    public Vec3 Map(Vec3 p) => Origin + Turn(p);

    /// <summary>A point of the frame's own xy plane, raised by <paramref name="height"/> mm.</summary>
    public Vec3 Map(Vec2 p, double height = 0) => Origin + X * p.X + Y * p.Y + Z * height;

    /// <summary>The same for a direction.</summary>
    public Vec3 Turn(Vec3 d) => X * d.X + Y * d.Y + Z * d.Z;

    /// <summary>First <paramref name="first"/>, then this.</summary>
    public Motion3 After(Motion3 first) => new(Turn(first.X), Turn(first.Y), Turn(first.Z), Map(first.Origin));

    /// <summary>Where a point of space lies in this frame.</summary>
    public Vec3 Local(Vec3 p)
    {
        var d = p - Origin;
        return new(X.Dot(d), Y.Dot(d), Z.Dot(d));
    }

    // Rodrigues' formula.
    static Vec3 Spun(Vec3 v, Vec3 k, double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return v * c + k.Cross(v) * s + k * (k.Dot(v) * (1 - c));
    }
}
