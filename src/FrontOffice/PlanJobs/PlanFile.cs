using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Templates;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.PlanJobs;

/// <summary>
/// What a person types about the plan besides the parts (docs/guide/plan.md): three small tables in one sheet, for milestones, for
/// the places and for the money. Ids follow from the names, so taking it in twice is the same rows.
/// </summary>
public sealed record PlanFile(ImmutableArray<Milestone> Milestones, Means Means)
{
    static readonly Dictionary<string, string[]> Tables = new()
    {
        ["milestone"] = ["weight", "wanted", "reached when"],
        ["place"] = ["how many"],
        ["money"] = ["likely", "currency", "low", "high", "day", "words"],
    };

    public static Parsed<PlanFile> Read(string text, Vehicle vehicle, ImmutableArray<VehicleSystem> systems, ImmutableArray<Part> parts)
    {
        try
        {
            return ReadRows(text, vehicle, systems, parts);
        }
        catch (RefusedException refused)
        {
            return refused.Refusal;
        }
    }

    static PlanFile ReadRows(string text, Vehicle vehicle, ImmutableArray<VehicleSystem> systems, ImmutableArray<Part> parts)
    {
        var (milestones, money) = (new Dictionary<Guid, Milestone>(), new MoneyRows());
        var means = Means.Usual(vehicle.Id);
        SheetTable? table = null;
        foreach (var row in SheetRows.Read(text, Tables.Keys))
        {
            if (SheetTable.Opened(row, Tables) is { } opened) table = opened;
            else if (table is null) throw new Place(row.Line).Refuse("heading", row.Cell(0), $"begin with one of {string.Join(", ", Tables.Keys)}");
            else if (table.Name == "milestone")
            {
                var m = MilestoneOf(new(table, row), vehicle, systems, parts);
                if (!milestones.TryAdd(m.Id, m)) throw new Place(row.Line).Refuse("milestone", m.Name, "name each once");
            }
            else if (table.Name == "place") means = WithPlaces(means, new(table, row));
            else money.Take(new(table, row));
        }
        means = means with { Purse = money.Purse };
        return means.Wrong is { } wrong ? throw new RefusedException(wrong) : new([.. milestones.Values], means);
    }

    static Means WithPlaces(Means means, SheetCells row)
    {
        if (!int.TryParse(row["how many"], NumberStyles.None, CultureInfo.InvariantCulture, out var n) || n > 20)
            throw new Place(row.Line).Refuse("how many", row["how many"], "give a whole number from 0 to 20");
        return row.First.ToLowerInvariant() switch
        {
            "bay" => means with { Bays = n },
            "bench" => means with { Benches = n },
            _ => throw new Place(row.Line).Refuse("place", row.First, "the places are bay and bench"),
        };
    }

    static Milestone MilestoneOf(SheetCells row, Vehicle vehicle, ImmutableArray<VehicleSystem> systems, ImmutableArray<Part> parts)
    {
        var place = new Place(row.Line);
        if (!double.TryParse(row["weight"], NumberStyles.Float, CultureInfo.InvariantCulture, out var weight)) throw place.Refuse("weight", row["weight"], "give a number from 0 to 1000");
        ImmutableArray<Guid> jobs = [.. row["reached when"].Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(JobOf)];
        var m = new Milestone(NamedId.Of(vehicle.Id, $"milestone {row.First}"), vehicle.Id, row.First, jobs, weight, row["wanted"] == "" ? null : MoneyRows.Day(place, "wanted", row["wanted"]));
        return m.Wrong is { } wrong ? throw new RefusedException(wrong.OnLine(row.Line)) : m;

        // A system is ready when it is adjusted; a part when it is back.
        Guid JobOf(string name) =>
            systems.FirstOrDefault(s => Same(s.Name, name)) is { } system ? JobTemplates.IdOf(system.Id, "adjust")
            : parts.FirstOrDefault(p => Same(p.Name, name) || Same($"{p.Name} {p.Hand}", name)) is not { } part
                ? throw place.Refuse("reached when", name, "name systems or parts of the list, with ; between them")
            : part.Route is null ? throw place.Refuse("reached when", name, "decide its route first: it has no jobs yet")
            : JobTemplates.IdOf(part.Id, "refit");
    }

    static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
