using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.MakeToSize;

/// <summary>
/// Sizes to identify among the readings that the stores keep. Such an entry names the thing and the facet as its kind
/// (<c>external thread pitch</c>), the item as from and the condition as to.
/// </summary>
public static class StoredSizes
{
    static readonly ImmutableDictionary<string, (string What, string Facet)> Kinds =
        (from s in MeasuredWords.Subjects
         from f in MeasuredWords.Facets
         where Practice.Measurable(s.Subject, f.Facet)
         select (Kind: $"{s.Words} {f.Words}", s.Words, f.Words)).ToImmutableDictionary(x => x.Kind, x => (x.Item2, x.Item3), StringComparer.OrdinalIgnoreCase);

    /// <summary>The kinds that a person may choose, in words.</summary>
    public static ImmutableArray<string> AllKinds { get; } = [.. Kinds.Keys.Order()];

    public static bool IsOne(ReadingEntry entry) => Kinds.ContainsKey(entry.Kind.Trim());

    /// <summary>One question for each item among the entries; entries of other kinds are passed over.</summary>
    public static Parsed<ImmutableArray<Question>> Of(IEnumerable<ReadingEntry> standing) =>
        SizeSheet.Read([.. standing.Where(IsOne).Select(Typed)]);

    /// <summary>What is wrong with one entry by itself; null when nothing is.</summary>
    public static string? Check(ReadingEntry entry)
    {
        try
        {
            MeasuredWords.Read(Typed(entry), SheetSpelling.Of(inches: false), InstrumentList.Usual());
            return null;
        }
        catch (RefusedException e)
        {
            return e.Message;
        }
    }

    public static string Kind(TypedSize typed) => $"{typed.What} {(typed.Facet.Length == 0 ? "size" : typed.Facet)}".ToLowerInvariant();

    internal static TypedSize Typed(ReadingEntry entry)
    {
        var (what, facet) = Kinds[entry.Kind.Trim()];
        var own = entry.PlusMinus.Trim();
        return new(0, entry.From.Trim(), what, facet, entry.Value.Trim(), own.Length == 0 ? entry.Instrument.Trim() : own[0] is '±' or '+' ? own : $"± {own}", entry.To.Trim());
    }
}
