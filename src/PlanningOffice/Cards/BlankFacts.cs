using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>What the planning office is told of a flat or folded part: plain facts, no geometry.</summary>
/// <param name="Title">What the card says on top.</param>
/// <param name="Thickness">mm.</param>
/// <param name="Density">kg/m³.</param>
/// <param name="Strength">Tensile strength, upper figure of the range, MPa.</param>
/// <param name="Width">Bounding rectangle of the blank, mm.</param>
/// <param name="Area">Of the blank less its holes, mm².</param>
/// <param name="CutLength">Outline and cut-outs, holes that are drilled not counted, mm.</param>
/// <param name="Quantity">Pieces wanted.</param>
/// <param name="Hazards">What the part itself brings: old paint, a tank, a brake or steering part.</param>
public sealed record BlankFacts(
    string Title, string Material, double Thickness, double Density, double Strength,
    double Width, double Height, double Area, double CutLength,
    ImmutableArray<BendFacts> Bends, ImmutableArray<HoleFacts> Holes, ImmutableArray<WeldFacts> Welds,
    int Quantity, ImmutableArray<Hazard> Hazards)
{
    public Refusal? Wrong =>
        Facts.Positive("thickness", Thickness) ?? Facts.Positive("density", Density) ?? Facts.Positive("strength", Strength)
        ?? Facts.Size("blank width", Width) ?? Facts.Size("blank height", Height) ?? Facts.Positive("area", Area)
        ?? Facts.Positive("cut length", CutLength) ?? Facts.Counted("quantity", Quantity)
        ?? (Area > Width * Height * (1 + 1e-9) ? Refusal.Of("area", $"{Area}", $"it cannot exceed the blank's rectangle, {Width * Height} mm²") : null)
        ?? (Bends.IsDefault || Holes.IsDefault || Welds.IsDefault || Hazards.IsDefault
            ? Refusal.Of("blank", null, "bends, holes, welds and hazards are lists; they may be empty") : null)
        ?? Bends.Select(b => Facts.Positive("bend length", b.Length) ?? Facts.Positive("bend angle", b.Angle)).FirstOrDefault(r => r is not null)
        ?? Holes.Select(h => Facts.Positive("hole diameter", h.Diameter) ?? Facts.Counted("number of holes", h.Count)).FirstOrDefault(r => r is not null)
        ?? Welds.Select(w => Facts.Positive("weld length", w.Length)).FirstOrDefault(r => r is not null);
}

/// <param name="Length">mm along the bend line.</param>
/// <param name="Radius">Inside, mm.</param>
/// <param name="Angle">How far it is turned from flat, radians, without sign.</param>
public readonly record struct BendFacts(double Length, double Radius, double Angle);

/// <param name="Diameter">mm.</param>
public readonly record struct HoleFacts(double Diameter, int Count);

/// <param name="Length">Of seam, mm.</param>
public readonly record struct WeldFacts(WeldKind Kind, double Length);

/// <summary>What the planning office is told of a turned part (a stud, a pin).</summary>
/// <param name="Diameter">Largest finished, mm.</param>
/// <param name="Length">mm.</param>
/// <param name="Density">kg/m³.</param>
/// <param name="Threads">How many threads are cut on each piece.</param>
public sealed record TurnedFacts(
    string Title, string Material, double Density, double Diameter, double Length, int Threads, int Quantity,
    ImmutableArray<Hazard> Hazards)
{
    public Refusal? Wrong =>
        Facts.Positive("density", Density) ?? Facts.Positive("diameter", Diameter) ?? Facts.Positive("length", Length)
        ?? (Threads < 0 ? Refusal.Of("threads", $"{Threads}", "give a whole number from 0 up") : null)
        ?? Facts.Counted("quantity", Quantity)
        ?? (Hazards.IsDefault ? Refusal.Of("hazards", null, "give a list; it may be empty") : null);
}

static class Facts
{
    public static Refusal? Positive(string field, double x) =>
        x is > 0 and < 1e12 ? null : Refusal.Of(field, $"{x}", "give a number above 0");

    public static Refusal? Size(string field, double mm) =>
        mm is >= 0.1 and <= 100_000 ? null : Refusal.Of(field, $"{mm}", "give a size from 0.1 to 100000 mm");

    public static Refusal? Counted(string field, int n) =>
        n is >= 1 and <= 10_000 ? null : Refusal.Of(field, $"{n}", "give a whole number from 1 to 10000");
}
