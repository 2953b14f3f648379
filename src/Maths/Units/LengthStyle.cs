namespace WitnessMark.Maths.Units;

public enum LengthNotation { Millimetres, DecimalInches, FractionInches }

/// <summary>How a length is written out. The unit always stands behind it.</summary>
/// <param name="Decimals">Decimals of a decimal notation, 0 to 6; of a fraction's residue in inches.</param>
/// <param name="Denominator">Finest fraction: a power of two from 1 to 128.</param>
public sealed record LengthStyle(LengthNotation Notation, int Decimals, int Denominator = 64)
{
    /// <summary>84.14 mm.</summary>
    public static LengthStyle Millimetres(int decimals = 2) => new(LengthNotation.Millimetres, decimals);

    /// <summary>3.313 in.</summary>
    public static LengthStyle DecimalInches(int decimals = 4) => new(LengthNotation.DecimalInches, decimals);

    /// <summary>3 5/16" + 0.0042": the nearest fraction, and what is left over to 0.0001 in, which is not written where it is nought.</summary>
    public static LengthStyle FractionInches(int denominator = 64) => new(LengthNotation.FractionInches, 4, denominator);

    /// <summary>Half the last place, mm: how far the written length may be from the true one by rounding.</summary>
    public double Rounding => 0.5 * Math.Pow(10, -Decimals) * (Notation == LengthNotation.Millimetres ? 1 : Inch.Mm);
}
