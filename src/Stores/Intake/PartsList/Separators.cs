namespace WitnessMark.Stores.Intake;

/// <summary>What parts the cells of a list.</summary>
public static class Separators
{
    /// <summary>Records looked at.</summary>
    const int Looked = 50;

    static readonly (char Sign, string Words)[] Known = [(',', "comma"), (';', "semicolon"), ('\t', "tab"), ('|', "bar")];

    public static string Words(char separator) => Known.FirstOrDefault(k => k.Sign == separator).Words ?? $"\"{separator}\"";

    /// <summary>The separator named or typed, or null.</summary>
    public static char? Read(string text) => text is [var one] ? one
        : Known.FirstOrDefault(k => k.Words.Equals(text.Trim(), StringComparison.OrdinalIgnoreCase)) is { Words: not null } known ? known.Sign : null;

    /// <summary>
    /// The one under which most records of the beginning have the same number of cells, and more than one; of equals the
    /// one with more cells. A list of one column has none, and a comma is taken.
    /// </summary>
    public static char Guess(string text)
    {
        var best = (Sign: ',', Agreeing: 0, Cells: 1);
        foreach (var (sign, _) in Known)
        {
            var counts = Delimited.Read(text, sign).Where(r => !r.Blank).Take(Looked).Select(r => r.Cells.Length).Where(n => n > 1).ToList();
            if (counts.Count == 0) continue;
            var usual = counts.GroupBy(n => n).MaxBy(g => (g.Count(), g.Key))!;
            var found = (Sign: sign, Agreeing: usual.Count(), Cells: usual.Key);
            if ((found.Agreeing, found.Cells).CompareTo((best.Agreeing, best.Cells)) > 0) best = found;
        }
        return best.Sign;
    }
}
