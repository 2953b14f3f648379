using System.Collections.Immutable;
using WitnessMark.FrontOffice.MeasureSample.Sheet;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSolid.Rows;

/// <summary>A feature in space as typed; cells that are not given are empty.</summary>
/// <param name="Line">Of the file, from 1.</param>
public sealed record TypedSolidFeature(int Line, string Id, string Kind, string On, string From, string To, string X, string Y, string Z, string Way, string Size);

/// <summary>A reading as typed.</summary>
public sealed record TypedSolidReading(int Line, string Kind, string From, string To, string Value, string Instrument, string At, string Pin, string Frame, string Note);

/// <summary>A face that was surveyed flat.</summary>
/// <param name="File">Name of its reading sheet; empty where its rows follow here.</param>
/// <param name="Way">Rough direction of the flat sketch's x in space.</param>
/// <param name="Text">Its rows at their own lines.</param>
public sealed record TypedFace(int Line, string Face, string File, string Way, string Text);

/// <summary>A reading sheet in space (docs/guide/survey-solid.md) as its words, cell by cell.</summary>
/// <param name="Inches">What a bare number means: inches, or else mm.</param>
/// <param name="LastLine">Of the file.</param>
public sealed record TypedSolid(
    string Id, string Title, bool Inches, int LastLine,
    ImmutableArray<TypedSolidFeature> Features, ImmutableArray<TypedSolidReading> Readings, ImmutableArray<TypedInstrument> Instruments, ImmutableArray<TypedFace> Faces)
{
    /// <summary>Opens the flat rows of a face; they run to the next such row or the end.</summary>
    public const string FaceRow = "on face";

    static readonly Dictionary<string, string[]> s_tables = new()
    {
        ["feature"] = ["kind", "on", "from", "to", "x", "y", "z", "way", "size", "note"],
        ["kind"] = ["from", "to", "value", "instrument", "at", "pin", "frame", "note"],
        ["instrument"] = ["resolution", "error", "repeat", "note"],
    };

    /// <summary>The sheet's cells, or one sentence when its rows cannot be told apart.</summary>
    public static Parsed<TypedSolid> Read(string text)
    {
        try
        {
            var (solid, faces) = Parted(text);
            return ReadRows(SheetRows.Read(solid, s_tables.Keys), text.AsSpan().Count('\n') + 1) with { Faces = [.. faces] };
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    /// <summary>Each part keeps its lines where they stand in the file, so that a refusal names the right one.</summary>
    static (string Solid, List<TypedFace> Faces) Parted(string text)
    {
        var lines = text.Split('\n');
        bool Opens(string line) => line.Split([',', ';', '\t'])[0].Trim().Equals(FaceRow, StringComparison.OrdinalIgnoreCase);
        int[] starts = [.. Enumerable.Range(0, lines.Length).Where(i => Opens(lines[i])), lines.Length];
        var faces = new List<TypedFace>();
        for (var k = 0; k + 1 < starts.Length; k++)
        {
            string[] cells = [.. lines[starts[k]].Split([',', ';', '\t']).Select(c => c.Trim()), "", "", ""];
            var rows = string.Join('\n', Enumerable.Repeat("", starts[k] + 1).Concat(lines[(starts[k] + 1)..starts[k + 1]]));
            faces.Add(new(starts[k] + 1, cells[1], cells[2], cells[3], rows));
        }
        return (string.Join('\n', lines[..starts[0]]), faces);
    }

    static TypedSolid ReadRows(List<SheetRow> rows, int lastLine)
    {
        var (features, readings, instruments) = (new List<TypedSolidFeature>(), new List<TypedSolidReading>(), new List<TypedInstrument>());
        var sheet = new TypedSolid("sample", "", false, lastLine, [], [], [], []);
        SheetTable? table = null;
        foreach (var row in rows)
        {
            if (SheetTable.Opened(row, s_tables) is { } opened) table = opened;
            else if (table is null) sheet = sheet.WithHead(row);
            else Add(new SheetCells(table, row));
        }
        return sheet with { Features = [.. features], Readings = [.. readings], Instruments = [.. instruments] };

        void Add(SheetCells c)
        {
            switch (c.Table)
            {
                case "feature":
                    features.Add(new(c.Line, c.First, c["kind"], c["on"], c["from"], c["to"], c["x"], c["y"], c["z"], c["way"], c["size"]));
                    break;
                case "instrument":
                    instruments.Add(new(c.Line, c.First, c["resolution"], c["error"], c["repeat"]));
                    break;
                default:
                    readings.Add(new(c.Line, c.First, c["from"], c["to"], c["value"], c["instrument"], c["at"], c["pin"], c["frame"], c["note"]));
                    break;
            }
        }
    }

    TypedSolid WithHead(SheetRow row) => row.Cell(0).ToLowerInvariant() switch
    {
        "sample" => this with { Id = row.Cell(1) is { Length: > 0 } id ? id : Id, Title = row.Cell(2) },
        "units" => this with
        {
            Inches = row.Cell(1).ToLowerInvariant() switch
            {
                "mm" => false,
                "inch" or "inches" or "in" => true,
                _ => throw new Place(row.Line).Refuse("units", row.Cell(1), "write mm or inch: what a bare number means"),
            },
        },
        _ => throw new Place(row.Line).Refuse("first cell", row.Cell(0), "before the tables come sample and units; a table opens with a heading row that begins with feature, kind or instrument"),
    };
}
