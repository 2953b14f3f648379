using System.Numerics;

namespace WitnessMark.Stores;

/// <summary>How far one spelling is from another.</summary>
static class Spelling
{
    /// <summary>Longest word compared by spelling, letters.</summary>
    public const int Longest = 40;

    /// <summary>
    /// Fewest letters put in, left out, changed or swapped with their neighbour, no letter touched twice: the optimal string
    /// alignment distance, or <paramref name="most"/> + 1 when it is larger. Source: F. J. Damerau, A technique for computer
    /// detection and correction of spelling errors, Communications of the ACM 7 (1964) 171-176, for the four slips.
    /// </summary>
    /// <param name="a">At most <see cref="Longest"/> letters, and so is <paramref name="b"/>; longer ones count as too far.</param>
    public static int Distance(ReadOnlySpan<char> a, ReadOnlySpan<char> b, int most)
    {
        if (Math.Abs(a.Length - b.Length) > most || a.Length > Longest || b.Length > Longest) return most + 1;
        Span<int> before = stackalloc int[Longest + 1], last = stackalloc int[Longest + 1], row = stackalloc int[Longest + 1];
        for (var j = 0; j <= b.Length; j++) last[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            var least = row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var same = a[i - 1] == b[j - 1];
                var steps = Math.Min(Math.Min(last[j], row[j - 1]) + 1, last[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) steps = Math.Min(steps, before[j - 2] + 1);
                row[j] = steps;
                least = Math.Min(least, steps);
            }
            // A swap reaches back two rows, so one row too far is not yet the end; it is when this row and the last one are.
            if (least > most && Least(last[..(b.Length + 1)]) > most) return most + 1;
            var free = before;
            before = last;
            last = row;
            row = free;
        }
        return Math.Min(last[b.Length], most + 1);
    }

    /// <summary>
    /// Slips forgiven: none up to 3 letters, one up to 6, two from 7. None at all in a word with a digit: 3/8 is not 5/8, and
    /// another part number is another part.
    /// </summary>
    public static int Forgiven(string word) => word.Any(char.IsDigit) ? 0 : word.Length switch { < 4 => 0, < 7 => 1, _ => 2 };

    /// <summary>Which signs a word holds, one bit for each of 32 classes. One slip changes at most two bits.</summary>
    public static uint Signs(string word)
    {
        var bits = 0u;
        foreach (var c in word) bits |= 1u << (c & 31);
        return bits;
    }

    /// <summary>True when the two words may be within so many slips; false is certain.</summary>
    public static bool MayBeWithin(uint a, uint b, int slips) => BitOperations.PopCount(a ^ b) <= 2 * slips;

    /// <summary>
    /// The word in the singular: ies to y, es to e, final s dropped, save after the letters where it is no plural. The S
    /// stemmer of D. Harman, How effective is suffixing?, Journal of the American Society for Information Science 42 (1991) 7-15.
    /// </summary>
    public static string Singular(string word) => word switch
    {
        { Length: < 4 } => word,
        [.., 'i', 'e', 's'] => word[^4] is 'e' or 'a' ? word : word[..^3] + "y",
        [.., 'a' or 'e' or 'o', 'e', 's'] => word,
        [.., 'u' or 's', 's'] => word,
        [.., 's'] => word[..^1],
        _ => word,
    };

    static int Least(ReadOnlySpan<int> row)
    {
        var least = row[0];
        foreach (var steps in row) least = Math.Min(least, steps);
        return least;
    }
}
