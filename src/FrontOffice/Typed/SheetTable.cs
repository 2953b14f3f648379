namespace WitnessMark.FrontOffice.Typed;

/// <summary>The columns that a heading row names.</summary>
sealed class SheetTable
{
    readonly Dictionary<string, int> _columns = [];

    SheetTable(string name, int width) => (Name, Width) = (name, width);

    /// <summary>First cell of the heading row, small letters.</summary>
    public string Name { get; }

    public int Width { get; }

    /// <summary>The table that a row opens; null when it opens none.</summary>
    /// <param name="tables">First cell of the heading → columns it may name; the first of them is needed.</param>
    public static SheetTable? Opened(SheetRow heading, IReadOnlyDictionary<string, string[]> tables)
    {
        var place = new Place(heading.Line);
        var table = new SheetTable(heading.Cell(0).ToLowerInvariant(), heading.Cells.Count);
        if (!tables.TryGetValue(table.Name, out var known)) return null;
        for (var i = 0; i < heading.Cells.Count; i++)
        {
            var column = heading.Cells[i].ToLowerInvariant();
            if (i > 0 && !known.Contains(column)) throw place.Refuse("heading", heading.Cells[i], $"the columns after {table.Name} are {string.Join(", ", known)}");
            if (!table._columns.TryAdd(column, i)) throw place.Refuse("heading", heading.Cells[i], "name each column once");
        }
        if (!table._columns.ContainsKey(known[0])) throw place.Refuse("heading", table.Name, $"a column {known[0]} is needed");
        return table;
    }

    /// <summary>−1 when the heading does not name it.</summary>
    public int Column(string name) => _columns.GetValueOrDefault(name, -1);
}

/// <summary>The cells of one row by the names of their columns; empty where the column or the cell is not there.</summary>
readonly record struct SheetCells
{
    readonly SheetTable _table;
    readonly SheetRow _row;

    public SheetCells(SheetTable table, SheetRow row)
    {
        (_table, _row) = (table, row);
        if (row.Cells.Count <= table.Width) return;
        throw new Place(row.Line).Refuse("row", row.Cells[^1],
            $"the heading names {table.Width} columns and this row has {row.Cells.Count} cells; put a cell that holds the separator between double quotes");
    }

    public string Table => _table.Name;

    public int Line => _row.Line;

    public string First => _row.Cell(0);

    public string this[string column] => _row.Cell(_table.Column(column));
}
