using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Intake;

/// <summary>Reads a typed parts list against a vehicle, without keeping anything.</summary>
public static class ListReader
{
    /// <summary>Most rows read; a longer list is divided.</summary>
    public const int MostRows = 200_000;

    /// <summary>Rows between two breaths, in which the page is drawn and a stop is heard.</summary>
    const int Breath = 2000;

    const int Shown = 5;

    /// <param name="today">The day of routes that come without one.</param>
    /// <param name="progress">Share read, 0 to 1.</param>
    /// <exception cref="RefusedException">The file is no list at all.</exception>
    public static async Task<ListPreview> Preview(
        ReadOnlyMemory<byte> bytes, VehicleTree tree, ListSettings settings, DateOnly today, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        var (text, encoding) = ListText.Read(bytes.Span).Value;
        var separator = settings.Separator ?? Separators.Guess(text);
        if (separator is '"' or '\r' or '\n') throw new RefusedException(Refusal.Of("separator", $"{separator}", "give a comma, a semicolon, a tab or a bar"));
        var first = Rows(text, separator).Take(Shown).ToList();
        if (first.Count == 0) throw new RefusedException(Refusal.Of("list", null, "it needs at least one row"));
        var titles = settings.Map is { HeadRow: false } ? 0 : ColumnMap.HeadAt(first.Select(r => r.Cells));
        first.RemoveRange(0, titles);
        var widest = first.MaxBy(r => r.Cells.Length).Cells.Length;
        var map = settings.Map ?? ColumnMap.Propose(first[0].Cells);
        // A ragged list without a head row is as wide as its widest row of the beginning.
        if (!map.HeadRow && map.Fields.Length < widest) map = map with { Fields = [.. map.Fields, .. Enumerable.Repeat(ListField.Ignored, widest - map.Fields.Length)] };
        ImmutableArray<string> head = [.. Enumerable.Range(0, map.Fields.Length).Select(i => map.HeadRow && i < first[0].Cells.Length ? first[0].Cells[i] : $"{i + 1}")];
        var preview = new ListPreview(encoding, separator, map, head, [.. first.Select(r => r.Cells)], map.Wrong, [], [], []) { Titles = titles };
        if (preview.Missing is not null) return preview;

        var cells = new ListCells(map, head, settings, today);
        var duplicates = new Duplicates(tree);
        var parts = ImmutableArray.CreateBuilder<ListedPart>();
        var refused = ImmutableArray.CreateBuilder<Refusal>();
        var found = ImmutableArray.CreateBuilder<ListDuplicate>();
        var rows = 0;
        var lines = Math.Max(1, text.Count(c => c is '\n'));
        foreach (var row in Rows(text, separator).Skip(titles + (map.HeadRow ? 1 : 0)))
        {
            if (++rows > MostRows) throw new RefusedException(Refusal.Of("list", $"more than {MostRows} rows", "divide it and take in one part after the other"));
            if (rows % Breath == 0)
            {
                progress?.Report(Math.Min(1, (double)row.Line / lines));
                await Task.Yield();
                stop.ThrowIfCancellationRequested();
            }
            var part = cells.Read(row);
            if (!part.Ok) refused.Add(part.Refusal!);
            else
            {
                parts.Add(part.Value);
                if (duplicates.Find(part.Value) is { } duplicate) found.Add(duplicate);
            }
        }
        progress?.Report(1);
        return preview with { Parts = parts.ToImmutable(), Refused = refused.ToImmutable(), Duplicates = found.ToImmutable() };
    }

    /// <summary>Blank rows are passed over, and remarks: rows that begin with # and a blank.</summary>
    static IEnumerable<DelimitedRow> Rows(string text, char separator) =>
        Delimited.Read(text, separator).Where(r => !r.Blank && !(r.Fault is null && r.Cells[0].StartsWith("# ", StringComparison.Ordinal)));
}
