using System.Globalization;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.CutBlank;

/// <summary>Bend allowance methods as a person names them.</summary>
public static class BendMethods
{
    /// <summary>What may be written.</summary>
    public static string Words { get; } = $"din6935, {string.Join(", ", Enum.GetValues<HandbookMetal>().Select(Handbook))}, or k=0.33";

    /// <param name="text"><c>din6935</c>, <c>handbook-…</c> or <c>k=…</c> with the neutral axis as a share of the thickness, over 0 to 1.</param>
    public static Parsed<BendMethod> Read(string text)
    {
        var word = text.Trim().ToLowerInvariant();
        if (word == "din6935") return new Din6935();
        foreach (var metal in Enum.GetValues<HandbookMetal>())
            if (word == Handbook(metal)) return new HandbookRule(metal);
        if (word.StartsWith("k=", StringComparison.Ordinal) && double.TryParse(word[2..], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var k) && k is > 0 and <= 1)
            return new NeutralAxis(k);
        return Refusal.Of("bend allowance", text, $"write {Words}");
    }

    static string Handbook(HandbookMetal metal) =>
        "handbook-" + string.Concat(metal.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? $"-{char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));
}
