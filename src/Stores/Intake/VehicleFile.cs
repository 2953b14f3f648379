using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;

namespace WitnessMark.Stores;

/// <summary>
/// A vehicle as typed in three small tables: the vehicle (one row), its parts, its samples. Ids follow from the names, so
/// the same tables taken in twice are the same rows.
/// </summary>
/// <param name="Sheets">For each sample the name of its reading sheet; empty where none is written yet.</param>
public sealed record VehicleFile(
    Vehicle Vehicle,
    ImmutableArray<VehicleSystem> Systems,
    ImmutableArray<Assembly> Assemblies,
    ImmutableArray<Part> Parts,
    ImmutableArray<PartSample> Samples,
    ImmutableDictionary<Guid, string> Sheets)
{
    /// <param name="vehicle">Columns name, maker, model, year, notes.</param>
    /// <param name="parts">Columns system, part, reference, hand, quantity, condition, route, reason, decided, and assembly where there are any.</param>
    /// <param name="samples">Columns part, hand, title, origin, lender, lent, due, wanted, sheet. Wanted readings are
    /// <c>kind | from | to | why</c>, with <c>;</c> between them.</param>
    public static Parsed<VehicleFile> Read(string vehicle, string parts, string samples)
    {
        try
        {
            var v = ReadVehicle(vehicle);
            var (systems, assemblies, read) = PartsTable.Read(v, parts);
            var (taken, sheets) = SamplesTable.Read(read, samples);
            return new VehicleFile(v, systems, assemblies, read, taken, sheets);
        }
        catch (RefusedException refused)
        {
            return refused.Refusal;
        }
    }

    static Vehicle ReadVehicle(string text)
    {
        var rows = CsvTable.Read(text, "name", "maker", "model", "year", "notes").Value.Rows;
        if (rows.Length != 1) throw new RefusedException(Refusal.Of("vehicle rows", $"{rows.Length}", "this table describes one vehicle"));
        var row = rows[0];
        int? year = row["year"] == "" ? null
            : int.TryParse(row["year"], NumberStyles.None, CultureInfo.InvariantCulture, out var y) ? y
            : throw new RefusedException(row.Refuse("year", "give the year in four figures or leave it empty"));
        var v = new Vehicle(NamedId.Of(NamedId.Vehicles, row["name"]), row["name"], row["maker"], row["model"], year, row["notes"]);
        return Check.Of(v) is { } wrong ? throw new RefusedException(wrong.OnLine(row.Line)) : v;
    }

    internal static DateOnly Date(CsvRow row, string column) =>
        DateOnly.TryParseExact(row[column], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date
        : throw new RefusedException(row.Refuse(column, "give a date as 1987-06-05"));

    internal static Hand HandOf(CsvRow row) => row["hand"].ToUpperInvariant() switch
    {
        "" => Hand.None,
        "LH" => Hand.LH,
        "RH" => Hand.RH,
        _ => throw new RefusedException(row.Refuse("hand", "give LH, RH or leave it empty")),
    };
}
