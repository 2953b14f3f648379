using System.Collections.Frozen;
using System.Collections.Immutable;

namespace WitnessMark.Trade;

/// <summary>Every source once; the tables name them by id.</summary>
public static class Sources
{
    public static ImmutableArray<Source> All { get; } = Table.Read("Sources/sources.csv", row =>
        new Source(row["id"], row["title"], row.OneOf<FigureGrade>("grade")));

    static readonly FrozenDictionary<string, Source> ById = All.ToFrozenDictionary(s => s.Id);

    public static Source Computed { get; } = Of("computed");

    public static Source Exact { get; } = Of("exact");

    /// <exception cref="KeyNotFoundException">A table names a source that is not listed: a fault in the data files.</exception>
    public static Source Of(string id) => ById[id];
}
