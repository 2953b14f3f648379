using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.Typed;

/// <summary>Reads lengths and angles of one sheet as they are written there.</summary>
sealed record SheetSpelling(Spelling Spelling)
{
    /// <param name="inches">A bare number means inches; mm if not.</param>
    public static SheetSpelling Of(bool inches) => new(TradeSpelling.Of(inches ? LengthUnit.Inch : LengthUnit.Millimetre));

    public WrittenLength Length(string text, string field, Place place, bool signed = false) =>
        OnLine(Lengths.Read(text, Spelling with { Signed = signed }, field), place);

    public WrittenAngle Angle(string text, string field, Place place, bool signed = false) =>
        OnLine(Angles.Read(text, Spelling with { Signed = signed }, field), place);

    /// <summary>Whether a figure is written as an angle, with the sign or a word for degrees or radians.</summary>
    public static bool LooksLikeAngle(string text) =>
        text.Contains('°') || text.Contains("deg", StringComparison.OrdinalIgnoreCase) || text.Contains("rad", StringComparison.OrdinalIgnoreCase);

    static T OnLine<T>(Parsed<T> parsed, Place place) =>
        parsed.Refusal is { } refusal ? throw new RefusedException(place.Line > 0 ? refusal.OnLine(place.Line) : refusal) : parsed.Value;
}
