using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>What the planning office is told of a shape made of several pieces: plain facts, no geometry.</summary>
/// <param name="Density">kg/m³.</param>
/// <param name="Strength">Tensile strength, upper figure of the range, MPa.</param>
/// <param name="Sheets">Pieces of one thickness together.</param>
/// <param name="Formers">Names of what is made first.</param>
/// <param name="Seams">mm of weld along joints, all together, plugs not counted.</param>
/// <param name="Plugs">Plug welds in all.</param>
/// <param name="Stock">What is bought.</param>
/// <param name="Hazards">What the part itself brings.</param>
public sealed record KitFacts(
    string Title, string Material, double Density, double Strength, ImmutableArray<SheetFacts> Sheets, ImmutableArray<string> Formers,
    double Seams, int Plugs, ImmutableArray<SheetToBuy> Stock, int Quantity, ImmutableArray<Hazard> Hazards)
{
    /// <summary>Templates of paper that tubes are marked and cut by.</summary>
    public int Papers { get; init; }

    /// <summary>Pieces that get their shape over tools or by rolling, beside folds and hammered edges.</summary>
    public int Formed { get; init; }

    public Refusal? Wrong =>
        Facts.Positive("density", Density) ?? Facts.Positive("strength", Strength) ?? Facts.Counted("quantity", Quantity)
        ?? (Seams is >= 0 and < 1e9 ? null : Refusal.Of("length of weld", $"{Seams}", "give a length in mm from 0 up"))
        ?? (Plugs is >= 0 and < 100_000 ? null : Refusal.Of("plug welds", $"{Plugs}", "give a whole number from 0 up"))
        ?? Sheets.Select(s => Facts.Positive("thickness", s.Thickness) ?? Facts.Counted("number of pieces", s.Pieces) ?? Facts.Positive("cut length", s.CutLength)).FirstOrDefault(r => r is not null);
}

/// <summary>All pieces of one thickness.</summary>
/// <param name="CutLength">Outlines and cut-outs, holes that are drilled not counted, mm.</param>
/// <param name="Bends">Straight, for the folder.</param>
/// <param name="Hammered">mm of bend that runs in a curve or is rolled: done over a former or by hand.</param>
public sealed record SheetFacts(double Thickness, int Pieces, double CutLength, ImmutableArray<BendFacts> Bends, ImmutableArray<HoleFacts> Holes, double Hammered);

/// <param name="Laying">How the pieces lie, by the rectangles round them; null when they fit no listed sheet.</param>
/// <param name="Area">Bought, mm².</param>
public sealed record SheetToBuy(string Words, double Thickness, double Area, Laying? Laying);
