namespace WitnessMark.PlanningOffice;

/// <summary>A block of straight rows from the bottom of the sheet up, and above it a block of pieces turned a quarter turn.</summary>
/// <param name="SheetTurned">The sheet itself was turned first, so that the blocks stand side by side.</param>
readonly record struct TwoBlocks(
    double Width, double Height, double Gap, int Rows, int Columns, int TurnedRows, int TurnedColumns, bool SheetTurned)
{
    public int Count => Rows * Columns + TurnedRows * TurnedColumns;

    /// <summary>The split that holds most, of all splits across the sheet either way. All sizes mm.</summary>
    public static TwoBlocks Fullest(StockSheet sheet, double width, double height, double gap) =>
        Splits(sheet.Width, sheet.Height, width, height, gap, sheetTurned: false)
            .Concat(Splits(sheet.Height, sheet.Width, width, height, gap, sheetTurned: true))
            .MaxBy(b => b.Count);

    public IEnumerable<LaidPiece> Pieces()
    {
        var (all, turned) = (Block(0, Rows, Columns, Width, Height, Gap), SheetTurned);
        return all.Concat(Block(Rows * (Height + Gap), TurnedRows, TurnedColumns, Height, Width, Gap))
            .Select(p => turned ? new LaidPiece(p.Y, p.X, p.Height, p.Width) : p);
    }

    static IEnumerable<TwoBlocks> Splits(double sheetWidth, double sheetHeight, double w, double h, double gap, bool sheetTurned)
    {
        var (columns, turnedColumns) = (Fit(sheetWidth, w, gap), Fit(sheetWidth, h, gap));
        for (var rows = 0; rows <= Fit(sheetHeight, h, gap); rows++)
            yield return new(w, h, gap, rows, columns, Fit(sheetHeight - rows * (h + gap), w, gap), turnedColumns, sheetTurned);
    }

    static IEnumerable<LaidPiece> Block(double bottom, int rows, int columns, double w, double h, double gap) =>
        from row in Enumerable.Range(0, rows)
        from column in Enumerable.Range(0, columns)
        select new LaidPiece(column * (w + gap), bottom + row * (h + gap), w, h);

    /// <summary>A piece that fills the room exactly still fits: 1e-9 mm swallows the rounding of the sums.</summary>
    static int Fit(double room, double piece, double gap) => (int)Math.Max(0, Math.Floor((room + gap + 1e-9) / (piece + gap)));
}
