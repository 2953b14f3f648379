using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Intake;

/// <summary>Reads the cells of one row as a part.</summary>
sealed partial class ListCells(ColumnMap map, ImmutableArray<string> head, ListSettings settings, DateOnly today)
{
    /// <summary>The part, or why the row is refused by line and column.</summary>
    public Parsed<ListedPart> Read(DelimitedRow row)
    {
        if (row.Fault is { } fault) return fault;
        var more = row.Cells.Skip(map.Fields.Length).FirstOrDefault(c => c.Length > 0);
        if (more is not null) return Refusal.Of($"column {map.Fields.Length + 1}", more, $"the list has {map.Fields.Length} columns; quote a cell that holds the separator", row.Line);
        if (row.Cells.Length == 1 && map.Fields.Length > 1 && row.Cells[0].IndexOfAny([',', ';', '\t']) >= 0)
            return Refusal.Of("separator", row.Cells[0], "part the cells of this line as in the rest of the list", row.Line);
        try
        {
            return Part(row);
        }
        catch (RefusedException refused)
        {
            return refused.Refusal.OnLine(row.Line);
        }
    }

    ListedPart Part(DelimitedRow row)
    {
        var system = Cell(row, ListField.System) is { Length: > 0 } named ? named : settings.InSystem.Trim();
        if (system == "") throw Refuse(ListField.System, "", "name the system it belongs to, or one for the whole list");
        var name = Cell(row, ListField.Part);
        if (name == "") throw Refuse(ListField.Part, "", "name the part");
        var references = map.Fields.Select((f, i) => f == ListField.Reference && i < row.Cells.Length ? row.Cells[i] : "").Where(r => r != "");
        var quantity = Cell(row, ListField.Quantity);
        var part = new ListedPart(row.Line, system, Cell(row, ListField.Assembly), name, string.Join("; ", references),
            Hand(Cell(row, ListField.Hand)), quantity == "" ? null : Quantity(quantity), Cell(row, ListField.Condition), Route(row));
        return part.Wrong is { } wrong ? throw new RefusedException(wrong) : part;
    }

    RouteDecision? Route(DelimitedRow row)
    {
        var words = Cell(row, ListField.Route);
        if (words == "") return null;
        var route = Routes.Read(words) ?? throw Refuse(ListField.Route, words, $"the routes are {Routes.All}; leave it empty while undecided");
        var decided = Cell(row, ListField.Decided);
        var on = decided == "" ? today
            : DateOnly.TryParseExact(decided, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
            : throw Refuse(ListField.Decided, decided, "give a date as 1987-06-05");
        return new(route, Cell(row, ListField.Reason) is { Length: > 0 } why ? why : "as the list says", on);
    }

    /// <summary>
    /// Near side and off side are the kerb's and the driver's, so they are left or right only once it is known where the
    /// driver sits (common practice).
    /// </summary>
    Hand Hand(string text)
    {
        var words = string.Concat(text.Where(char.IsLetter)).ToLowerInvariant();
        return words switch
        {
            "" or "none" or "na" => Stores.Hand.None,
            "lh" or "l" or "left" or "lhs" or "lefthand" => Stores.Hand.LH,
            "rh" or "r" or "right" or "rhs" or "righthand" => Stores.Hand.RH,
            "ns" or "near" or "nearside" => settings.Driver == Stores.Hand.None ? throw Sided() : settings.Driver == Stores.Hand.RH ? Stores.Hand.LH : Stores.Hand.RH,
            "os" or "off" or "offside" => settings.Driver == Stores.Hand.None ? throw Sided() : settings.Driver,
            "lhrh" or "rhlh" or "lr" or "rl" or "both" or "pair" => throw Refuse(ListField.Hand, text, "give one row for each hand"),
            _ => throw Refuse(ListField.Hand, text, "give LH, RH or leave it empty"),
        };
        RefusedException Sided() => Refuse(ListField.Hand, text, "say on which side the driver sits, or give LH or RH");
    }

    int Quantity(string text)
    {
        var match = Counted.Match(text);
        return match.Success && int.TryParse(match.Groups[1].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n >= 1 ? n
            : throw Refuse(ListField.Quantity, text, "give a whole number from 1 up, without a sign for thousands");
    }

    [GeneratedRegex(@"^(?:x ?)?([0-9]{1,9})(?:[.,]0{1,2})?(?: ?(?:off|x|no\.?|pcs?))?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Counted { get; }

    string Cell(DelimitedRow row, ListField field) =>
        map.Fields.IndexOf(field) is >= 0 and var i && i < row.Cells.Length ? row.Cells[i] : "";

    RefusedException Refuse(ListField field, string value, string wanted)
    {
        var column = map.Fields.IndexOf(field);
        return new(Refusal.Of(column < 0 ? $"{field}".ToLowerInvariant() : $"column {column + 1} ({(map.HeadRow ? head[column] : field)})", value, wanted));
    }
}
