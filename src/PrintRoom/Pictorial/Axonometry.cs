using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Pictorial;

/// <summary>
/// A way of looking along parallel lines, z upright on the paper. <paramref name="Viewer"/> points from the body to the eye, length 1;
/// <paramref name="Scale"/> mm on paper for a mm across the line of sight.
/// </summary>
public sealed record Axonometry(Vec3 Viewer, double Scale)
{
    /// <summary>Isometric (ISO 5456-3): the three axes at 120° on the paper, true lengths along each.</summary>
    public static Axonometry Isometric { get; } = new(new Vec3(1, -1, 1).Unit, Math.Sqrt(1.5));

    /// <summary>
    /// Dimetric (ISO 5456-3): x and z true, y halved. The exact projection with these ratios has its axes at 7.18° and 41.41° on the paper,
    /// which the standard rounds to 7° and 42°.
    /// </summary>
    public static Axonometry Dimetric { get; } = new(new Vec3(1, -Math.Sqrt(7), 1) / 3, 3 / (2 * Math.Sqrt(2)));

    /// <summary>The same seen from another side: the body turned about the upright by quarter turns, and from below if wanted.</summary>
    public Axonometry From(int quarterTurns, bool below = false)
    {
        var v = Viewer;
        for (var i = 0; i < (quarterTurns % 4 + 4) % 4; i++) v = new(-v.Y, v.X, v.Z);
        return this with { Viewer = below ? v with { Z = -v.Z } : v };
    }

    /// <summary>Along the paper to the right.</summary>
    public Vec3 Right => new Vec3(0, 0, 1).Cross(Viewer).Unit;

    public Vec3 Up => Viewer.Cross(Right);

    /// <summary>Place on the paper, mm, and nearness to the eye.</summary>
    public Vec3 Look(Vec3 p) => new(Right.Dot(p) * Scale, Up.Dot(p) * Scale, Viewer.Dot(p) * Scale);
}
