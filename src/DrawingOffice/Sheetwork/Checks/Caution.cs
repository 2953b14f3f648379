using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Sheetwork;

public enum CautionKind
{
    AllowanceRange, BlankOverlaps, HoleNearBend, ShortFlange, SharpRadius, ReliefNotDrawn, ReliefDrawn, CannotBend, PartsCollide, TooWide, TooThick,
    Stretch, Shrink, OutsideRange, Strength, Weld, Safety,
}

/// <summary>Something to look at before cutting, with its numbers.</summary>
/// <param name="About">Ids of the faces, bends ("A-B") or openings concerned.</param>
/// <param name="Value">What was found, mm unless the sentence says otherwise; NaN when the matter has no number.</param>
/// <param name="Limit">What it should be.</param>
public sealed record Caution(CautionKind Kind, string Words, ImmutableArray<string> About, double Value = double.NaN, double Limit = double.NaN);
