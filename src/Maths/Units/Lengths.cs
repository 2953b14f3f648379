using System.Collections.Immutable;
using System.Globalization;

namespace WitnessMark.Maths.Units;

/// <summary>
/// Lengths at the edge: what people write, to mm and back.
/// Whatever can be read two ways is refused with both readings; nothing is guessed.
/// </summary>
public static class Lengths
{
    /// <summary>Longer than any vehicle, mm: a slip of the pen.</summary>
    public const double Longest = 1_000_000;

    const string Example = "a length such as 31.5 mm, 3 5/16 in, 64 thou or 12.70; 12.72 ± 0.02 mm";

    /// <param name="text">Up to 200 characters.</param>
    /// <param name="field">What the refusal calls it.</param>
    public static Parsed<WrittenLength> Read(string? text, Spelling? spelling = null, string field = "length")
    {
        var how = spelling ?? Spelling.Usual;
        var statement = Statement.Read<LengthUnit>(text, field, Example, part => LengthParts.Read(part, how, field));
        if (statement.Refusal is { } refused) return refused;
        var said = statement.Value;

        // A bare number beside 14 SWG or 3 ft is not in gauges, and hardly in feet.
        var bare = said.Unit is LengthUnit.Named or LengthUnit.Foot ? null : said.Unit ?? how.Bare;
        var repeats = ImmutableArray.CreateBuilder<double>();
        foreach (var part in said.Values)
        {
            var mm = Mm(part, bare, said.Unit is not null, text!, field);
            if (mm.Refusal is { } wrong) return wrong;
            repeats.Add(mm.Value);
        }
        double? plusMinus = null;
        if (said.PlusMinus is { } pm)
        {
            var mm = Mm(pm with { BarePoint = false }, bare, said.Unit is not null, text!, field);
            if (mm.Refusal is { } wrong) return wrong;
            plusMinus = mm.Value;
        }
        return new WrittenLength(repeats.Sum() / repeats.Count, said.Values[0].Unit ?? bare!.Value)
        {
            PlusMinus = plusMinus,
            Repeats = repeats.ToImmutable(),
            Bare = said.Unit is null && said.Values[0].Unit is null,
        };
    }

    /// <param name="bare">What a number without a unit is in; none: it is refused.</param>
    /// <param name="saidElsewhere">The unit for bare numbers was written in the same statement.</param>
    static Parsed<double> Mm(Part<LengthUnit> part, LengthUnit? bare, bool saidElsewhere, string text, string field)
    {
        if ((part.Unit ?? bare) is not { } unit)
            return Refusal.Of(field, text, saidElsewhere ? "write the unit behind every number" : BothUnits(part.Value, LengthUnit.Millimetre, "a number without a unit"));
        var decimals = unit is LengthUnit.Millimetre or LengthUnit.Centimetre or LengthUnit.Metre or LengthUnit.Thou;
        if (part.Unit is null && decimals && part.HasFraction)
            return Refusal.Of(field, text, BothUnits(part.Value, unit, "a fraction without a unit"));
        if (part.Unit is null && decimals && part.BarePoint && !saidElsewhere)
            return Refusal.Of(field, text, BothUnits(part.Value, unit, "a number that begins with its point, as inches do,"));
        var mm = Mm(part.Value, unit);
        return Math.Abs(mm) <= Longest ? mm : Refusal.Of(field, text, "write a length of at most 1000 m");
    }

    static string BothUnits(double value, LengthUnit other, string what) => string.Create(CultureInfo.InvariantCulture,
        $"{what} could be {value:0.######} in ({Inch.ToMm(value):0.####} mm) or {value:0.######} {Symbol(other)}; write the unit");

    static string Symbol(LengthUnit unit) => unit switch
    {
        LengthUnit.Centimetre => "cm",
        LengthUnit.Metre => "m",
        LengthUnit.Thou => "thou",
        _ => "mm",
    };

    /// <summary>A named size is in mm already.</summary>
    static double Mm(double value, LengthUnit unit) => unit switch
    {
        LengthUnit.Centimetre => value * 10,
        LengthUnit.Metre => value * 1000,
        LengthUnit.Inch => Inch.ToMm(value),
        LengthUnit.Thou => Inch.ToMm(value) / 1000,
        LengthUnit.Foot => Inch.ToMm(value * 12),
        _ => value,
    };
}
