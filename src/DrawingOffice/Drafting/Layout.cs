using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>Where the view and its tables lie on a sheet.</summary>
/// <param name="View">Room for the view, mm.</param>
/// <param name="Places">Left top corner of each table; null where tables go on sheets of their own.</param>
sealed record Layout(PaperSize Paper, Box View, ImmutableArray<Vec2>? Places)
{
    // Between view, tables and frame, mm.
    const double Air = 6;

    /// <summary>The first sheet on which all fits, tables beside the view or under it; else the first that takes the view, tables on sheets of their own; else null.</summary>
    public static Layout? Best(ImmutableArray<PaperSize> papers, Box view, ImmutableArray<Table> tables, TitleFields title)
    {
        var whole = papers.Select(p => Beside(p, view, tables, title) ?? Under(p, view, tables, title));
        return whole.Concat(papers.Select(p => Apart(p, view, tables, title))).FirstOrDefault(l => l is not null);
    }

    static Box Room(PaperSize paper) => Frame.Inside(paper).Grown(-Air);

    static Layout? Taken(PaperSize paper, Box room, Box view, ImmutableArray<Vec2>? places) =>
        view.Width <= room.Width && view.Height <= room.Height ? new(paper, room, places) : null;

    /// <summary>Tables in a column down the right side, over the title block when that reaches so far.</summary>
    static Layout? Beside(PaperSize paper, Box view, ImmutableArray<Table> tables, TitleFields title)
    {
        if (tables.Length == 0) return Apart(paper, view, tables, title);
        var (room, block) = (Room(paper), TitleBlock.Height(title));
        var wide = tables.Max(t => t.Width);
        var height = tables.Sum(t => t.Height) + (tables.Length - 1) * Air;
        var over = room.Bottom + block;
        if (room.Top - height < over + Air) return null;
        var left = room.Right - wide;
        var places = ImmutableArray.CreateBuilder<Vec2>();
        var y = room.Top;
        foreach (var t in tables)
        {
            places.Add(new(left, y));
            y -= t.Height + Air;
        }
        // Left of the title block the view may run down to the frame.
        var blockLeft = Frame.Inside(paper).Right - TitleBlock.Width;
        var right = left - Air;
        var bottom = right <= blockLeft - Air ? room.Bottom : over;
        return Taken(paper, room with { Right = right, Bottom = bottom }, view, places.ToImmutable());
    }

    /// <summary>Tables in a strip over the title block, side by side, in as many lines as they need.</summary>
    static Layout? Under(PaperSize paper, Box view, ImmutableArray<Table> tables, TitleFields title)
    {
        var room = Room(paper);
        if (tables.Any(t => t.Width > room.Width)) return null;
        var lines = Flow(tables, room.Width);
        var height = lines.Sum(l => l.Max(t => t.Height) + Air);
        var floor = room.Bottom + TitleBlock.Height(title);
        var places = ImmutableArray.CreateBuilder<Vec2>();
        var y = floor + height;
        foreach (var line in lines)
        {
            var x = room.Left;
            foreach (var t in line)
            {
                places.Add(new(x, y));
                x += t.Width + Air;
            }
            y -= line.Max(t => t.Height) + Air;
        }
        return Taken(paper, room with { Bottom = floor + height + Air }, view, places.ToImmutable());
    }

    static List<List<Table>> Flow(ImmutableArray<Table> tables, double width)
    {
        var lines = new List<List<Table>>();
        foreach (var t in tables)
        {
            if (lines.Count > 0 && lines[^1].Sum(o => o.Width + Air) + t.Width <= width) lines[^1].Add(t);
            else lines.Add([t]);
        }
        return lines;
    }

    static Layout? Apart(PaperSize paper, Box view, ImmutableArray<Table> tables, TitleFields title)
    {
        var room = Room(paper);
        return Taken(paper, room with { Bottom = room.Bottom + TitleBlock.Height(title) }, view, tables.Length == 0 ? [] : null);
    }

    /// <param name="view">The marks of the view, which lie within <paramref name="bounds"/>.</param>
    public ImmutableArray<PrintRoom.Sheet> Draw(IEnumerable<Mark> view, Box bounds, ImmutableArray<Table> tables, TitleFields title, DrawingScale scale, string units)
    {
        var following = Places is null ? Following(tables, title) : [];
        var board = new Board();
        Frame.Draw(board, Paper);
        TitleBlock.Draw(board, Frame.Inside(Paper), title, scale.ToString(), units, 1, 1 + following.Count);
        board.AddMoved(view, View.Middle - bounds.Middle);
        if (Places is { } places)
        {
            for (var i = 0; i < tables.Length; i++) tables[i].Draw(board, places[i]);
        }
        var sheets = ImmutableArray.CreateBuilder<PrintRoom.Sheet>();
        sheets.Add(new(title.Title, Paper.Width, Paper.Height, board.Marks));
        for (var n = 0; n < following.Count; n++)
        {
            var next = new Board();
            Frame.Draw(next, PaperSize.A4);
            TitleBlock.Draw(next, Frame.Inside(PaperSize.A4), title, "—", units, n + 2, 1 + following.Count);
            foreach (var (table, at) in following[n]) table.Draw(next, at);
            sheets.Add(new($"{title.Title}, sheet {n + 2}", PaperSize.A4.Width, PaperSize.A4.Height, next.Marks));
        }
        return sheets.ToImmutable();
    }

    /// <summary>Tables one under another on upright A4 sheets, cut where a sheet ends.</summary>
    static List<List<(Table Table, Vec2 At)>> Following(ImmutableArray<Table> tables, TitleFields title)
    {
        var room = Room(PaperSize.A4);
        var floor = room.Bottom + TitleBlock.Height(title);
        var pages = new List<List<(Table, Vec2)>>();
        var y = double.NegativeInfinity;
        foreach (var piece in tables.SelectMany(t => t.Split(room.Top - floor)))
        {
            if (pages.Count == 0 || y - piece.Height < floor)
            {
                pages.Add([]);
                y = room.Top;
            }
            pages[^1].Add((piece, new(room.Left, y)));
            y -= piece.Height + Air;
        }
        return pages;
    }
}
