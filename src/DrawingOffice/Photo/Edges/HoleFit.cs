using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Edges;

/// <summary>A hole from one click inside it.</summary>
public static class HoleFit
{
    /// <param name="inside">px, anywhere in the hole.</param>
    /// <param name="largest">Largest diameter looked for, mm.</param>
    public static Parsed<HoleSeen> Of(TruePhoto photo, Vec2 inside, double largest = 120) =>
        Refusal.Of("hole", $"{inside} {largest}", "a place inside a hole");
}
