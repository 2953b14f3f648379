namespace WitnessMark.Stores;

/// <summary>Letters as they are compared: small, without accents. The app runs without the system's tables of languages, so it brings its own.</summary>
static class Letters
{
    /// <summary>Base letters of U+00C0 to U+017F: compatibility decomposition of Unicode 14 without its marks; æ, ß, ø and the like by their first letter, × as x.</summary>
    const string Bases =
        "aaaaaaaceeeeiiiidnoooooxouuuuytsaaaaaaaceeeeiiiidnooooo ouuuuyty" +
        "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiiiiiijjkkkllllllllllnnnnnnnnnoooooooo" +
        "rrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";

    /// <summary>A part of one as a sign, as people type it.</summary>
    public static string? Fraction(char c) => c switch
    {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '⅓' => "1/3",
        '⅔' => "2/3",
        _ => null,
    };

    public static char Small(char c) => c switch
    {
        >= '\u00C0' and <= '\u017F' => Bases[c - '\u00C0'],
        '\u2044' => '/',
        _ => char.ToLowerInvariant(c),
    };

    /// <summary>A combining accent, written after its letter.</summary>
    public static bool IsMark(char c) => c is >= '\u0300' and <= '\u036F';
}
