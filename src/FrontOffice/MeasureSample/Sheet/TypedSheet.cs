using System.Collections.Immutable;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSample.Sheet;

/// <summary>A feature as typed; cells that are not given are empty.</summary>
/// <param name="Line">Of the file, from 1.</param>
public sealed record TypedFeature(int Line, string Id, string Kind, string From, string To, string X, string Y, string Size, string Length, string Turn, string Condition = "", string Wear = "");

/// <summary>A reading as typed.</summary>
public sealed record TypedReading(int Line, string Kind, string From, string To, string Value, string Instrument, string Note);

/// <summary>A paper or picture with a scale of its own, as typed.</summary>
/// <param name="Scale">± in per cent.</param>
public sealed record TypedFrame(int Line, string Name, string Scale);

/// <summary>An instrument as typed.</summary>
public sealed record TypedInstrument(int Line, string Name, string Resolution, string Error, string Repeat);

/// <summary>
/// A reading sheet (docs/guide/survey-sheet.md) as its words, cell by cell: what a person wrote, before anything is made of it.
/// </summary>
/// <param name="Inches">What a bare number means: inches, or else mm.</param>
/// <param name="LastLine">Of the file.</param>
public sealed record TypedSheet(
    string Id, string Title, bool Inches, int LastLine,
    ImmutableArray<TypedFeature> Features, ImmutableArray<TypedReading> Readings, ImmutableArray<TypedInstrument> Instruments)
{
    public ImmutableArray<TypedFrame> Frames { get; init; } = [];

    static readonly Dictionary<string, string[]> Tables = new()
    {
        ["feature"] = ["kind", "from", "to", "x", "y", "size", "length", "turn", "condition", "wear", "note"],
        ["kind"] = ["from", "to", "value", "instrument", "note"],
        ["frame"] = ["scale", "note"],
        ["instrument"] = ["resolution", "error", "repeat", "note"],
    };

    static readonly TypedSheet Empty = new("sample", "", false, 1, [], [], []);

    /// <summary>The sheet's cells, or one sentence when its rows cannot be told apart.</summary>
    public static Parsed<TypedSheet> Read(string text)
    {
        try
        {
            return ReadRows(SheetRows.Read(text, Tables.Keys));
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    static TypedSheet ReadRows(List<SheetRow> rows)
    {
        var (features, readings, instruments) = (new List<TypedFeature>(), new List<TypedReading>(), new List<TypedInstrument>());
        var frames = new List<TypedFrame>();
        var sheet = Empty with { LastLine = rows.Count > 0 ? rows[^1].Line : 1 };
        SheetTable? table = null;
        int? unitsLine = null;
        foreach (var row in rows)
        {
            if (SheetTable.Opened(row, Tables) is { } opened) table = opened;
            else if (table is null) sheet = sheet.WithHead(row, ref unitsLine);
            else Add(new SheetCells(table, row));
        }
        return sheet with { Features = [.. features], Readings = [.. readings], Instruments = [.. instruments], Frames = [.. frames] };

        void Add(SheetCells c)
        {
            switch (c.Table)
            {
                case "feature":
                    features.Add(new(c.Line, c.First, c["kind"], c["from"], c["to"], c["x"], c["y"], c["size"], c["length"], c["turn"], c["condition"], c["wear"]));
                    break;
                case "frame":
                    frames.Add(new(c.Line, c.First, c["scale"]));
                    break;
                case "instrument":
                    instruments.Add(new(c.Line, c.First, c["resolution"], c["error"], c["repeat"]));
                    break;
                default:
                    readings.Add(new(c.Line, c.First, c["from"], c["to"], c["value"], c["instrument"], c["note"]));
                    break;
            }
        }
    }

    TypedSheet WithHead(SheetRow row, ref int? unitsLine)
    {
        var place = new Place(row.Line);
        switch (row.Cell(0).ToLowerInvariant())
        {
            case "sample":
                return this with { Id = row.Cell(1) is { Length: > 0 } id ? id : Id, Title = row.Cell(2) };
            case "units":
                if (unitsLine is { } first) throw place.Refuse("units", row.Cell(1), $"the units are given on line {first} already; give them once");
                unitsLine = row.Line;
                return this with
                {
                    Inches = row.Cell(1).ToLowerInvariant() switch
                    {
                        "mm" => false,
                        "inch" or "inches" or "in" => true,
                        _ => throw place.Refuse("units", row.Cell(1), "write mm or inch: what a bare number means"),
                    },
                };
            default:
                throw place.Refuse("first cell", row.Cell(0), "before the tables come sample and units; a table opens with a heading row that begins with feature, kind, frame or instrument");
        }
    }
}
