namespace WitnessMark.Stores;

/// <summary>Letters as they are compared: small, without accents. The app runs without the system's tables of languages, so it brings its own.</summary>
static class Letters
{
    /// <summary>Base letters of U+00C0 to U+017F: compatibility decomposition of Unicode 14 without its marks; æ, ß, ø and the like by their first letter, × as x.</summary>
    const string Bases =
        "aaaaaaaceeeeiiiidnoooooxouuuuytsaaaaaaaceeeeiiiidnooooo ouuuuyty" +
        "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiiiiiijjkkkllllllllllnnnnnnnnnoooooooo" +
        "rrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";

    public static char Small(char c) => c switch
    {
        >= '\u00C0' and <= '\u017F' => Bases[c - '\u00C0'],
        '\u2044' => '/',
        _ => char.ToLowerInvariant(c),
    };

    /// <summary>A combining accent, written after its letter.</summary>
    public static bool IsMark(char c) => c is >= '\u0300' and <= '\u036F';
}
