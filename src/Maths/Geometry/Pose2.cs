namespace WitnessMark.Maths.Geometry;

/// <summary>A place and turn in the plane: where a shape's own origin lies and which way its own x axis (length 1) points.</summary>
public readonly record struct Pose2(Vec2 Origin, Vec2 X)
{
    public static Pose2 Identity => new(Vec2.Zero, new(1, 0));

    public static Pose2 Shift(Vec2 by) => new(by, new(1, 0));

    public Vec2 Map(Vec2 p) => Origin + Turn(p);

    /// <summary>The same for a direction.</summary>
    public Vec2 Turn(Vec2 d) => X * d.X + X.Left * d.Y;
}
