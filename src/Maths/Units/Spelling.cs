namespace WitnessMark.Maths.Units;

/// <summary>A unit of length as written. Inside everything is mm.</summary>
public enum LengthUnit { Millimetre, Centimetre, Metre, Inch, Thou, Foot, Named }

/// <summary>How a person writes lengths: what is meant where he does not say it.</summary>
public sealed record Spelling
{
    /// <summary>Millimetres, decimal mark not said, no named sizes, no negative lengths.</summary>
    public static Spelling Usual { get; } = new();

    /// <summary>The unit of a bare number; none: a bare number is refused.</summary>
    public LengthUnit? Bare { get; init; } = LengthUnit.Millimetre;

    public DecimalMark Mark { get; init; } = DecimalMark.Unsaid;

    /// <summary>Whether a leading minus is allowed: true for coordinates, false for dimensions.</summary>
    public bool Signed { get; init; }

    /// <summary>
    /// Sizes that go by a name (14 SWG, No. 43 drill), given tidied text: the size in mm, a refusal that says what is wrong with the
    /// name, or null where the text is no name at all.
    /// </summary>
    public Func<string, string, Parsed<double>?> Named { get; init; } = static (_, _) => null;
}
