using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores;

/// <summary>The typed list of samples.</summary>
static class SamplesTable
{
    public static (ImmutableArray<PartSample> Samples, ImmutableDictionary<Guid, string> Sheets) Read(ImmutableArray<Part> parts, string text)
    {
        var samples = new Dictionary<Guid, PartSample>();
        var sheets = ImmutableDictionary.CreateBuilder<Guid, string>();
        var table = CsvTable.Read(text, "part", "hand", "title", "origin", "lender", "lent", "due", "wanted", "sheet");
        foreach (var row in table.Value.Rows)
        {
            var hand = VehicleFile.HandOf(row);
            var part = parts.FirstOrDefault(p => p.Name == row["part"] && p.Hand == hand)
                ?? throw new RefusedException(row.Refuse("part", "no part of this name and hand stands in the parts list"));
            var sample = ReadSample(part, row);
            if (!samples.TryAdd(sample.Id, sample)) throw new RefusedException(row.Refuse("title", "this part has a sample of that title already"));
            sheets[sample.Id] = row["sheet"];
        }
        return ([.. samples.Values], sheets.ToImmutable());
    }

    static PartSample ReadSample(Part part, CsvRow row)
    {
        var origin = row["origin"].ToLowerInvariant() switch
        {
            "taken off" => SampleOrigin.TakenOff,
            "borrowed" => SampleOrigin.Borrowed,
            "photographed" => SampleOrigin.Photographed,
            _ => throw new RefusedException(row.Refuse("origin", "give taken off, borrowed or photographed")),
        };
        var loan = row["lender"] + row["lent"] + row["due"] == "" ? null
            : new Loan(row["lender"], VehicleFile.Date(row, "lent"), VehicleFile.Date(row, "due"));
        var sample = new PartSample(NamedId.Of(part.Id, row["title"]), part.Id, row["title"], origin, loan, ReadWanted(row));
        return Check.Of(sample) is { } wrong ? throw new RefusedException(wrong.OnLine(row.Line)) : sample;
    }

    static ImmutableArray<WantedReading> ReadWanted(CsvRow row) =>
        [.. row["wanted"].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(w => ReadWanted(row, w))];

    /// <summary>The kind may have several words, so it stands in its own field: <c>kind | from | to | why</c>.</summary>
    static WantedReading ReadWanted(CsvRow row, string text) =>
        text.Split('|', StringSplitOptions.TrimEntries) is [var kind, var from, var to, var why]
            ? new(kind, from, to, why)
            : throw new RefusedException(row.Refuse("wanted", "write kind | from | to | why, and ; between readings; to may be empty"));
}
