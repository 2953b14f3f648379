namespace WitnessMark.DrawingOffice.Pieces.Nesting;

/// <summary>A sheet being filled: what is covered in each of its rows, from the left, sorted.</summary>
sealed class OpenSheet(double width, int rows)
{
    // Two pieces may touch within this, mm.
    const double Touch = 1e-6;

    readonly List<Span>[] _covered = [.. Enumerable.Range(0, rows).Select(_ => new List<Span>())];

    public double Used { get; private set; }

    /// <summary>The place farthest to the left, then lowest; null when there is none within the limit.</summary>
    /// <param name="limit">Of its right end, mm.</param>
    public (double X, int Row)? Place(Turned piece, double limit)
    {
        (double X, int Row)? best = null;
        var most = Math.Min(width, limit) - piece.Width + Touch;
        for (var row = 0; row + piece.Rows.Length <= rows; row++)
        {
            var x = Left(piece, row, most);
            if (x >= most) continue;
            (best, most) = ((x, row), x);
            if (x <= 0) break;
        }
        return best;
    }

    /// <summary>The least x at which the piece lies free with its bottom in a row; <paramref name="most"/> or more when there is none below that.</summary>
    double Left(Turned piece, int row, double most)
    {
        var x = 0.0;
        for (var moved = true; moved;)
        {
            moved = false;
            for (var r = 0; r < piece.Rows.Length; r++)
                foreach (var span in piece.Rows[r])
                    foreach (var taken in _covered[row + r])
                    {
                        if (taken.To <= x + span.From + Touch) continue;
                        if (taken.From >= x + span.To - Touch) break;
                        x = taken.To - span.From;
                        moved = true;
                        if (x >= most) return x;
                    }
        }
        return x;
    }

    public void Put(Turned piece, double x, int row)
    {
        for (var r = 0; r < piece.Rows.Length; r++)
            foreach (var span in piece.Rows[r])
            {
                var taken = new Span(x + span.From, x + span.To);
                var line = _covered[row + r];
                var at = line.FindIndex(s => s.From > taken.From);
                line.Insert(at < 0 ? line.Count : at, taken);
            }
        Used = Math.Max(Used, x + piece.Width);
    }
}
