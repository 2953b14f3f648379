using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Pieces.Sheets;

/// <summary>The sheet that shows a kit as a whole: the finished shape as a picture, pieces, formers, bends, welds, figures, steps and cautions.</summary>
public static class KitDrawing
{
    // What stands between the frame and a table on an upright A4 sheet, mm.
    const double Widest = 166;

    /// <summary>A longer table goes into the list file only.</summary>
    const int MostRows = 60;

    static readonly ImmutableArray<PaperSize> s_papers = [PaperSize.A4, PaperSize.A4.Turned, PaperSize.A3.Turned];

    /// <exception cref="RefusedException">The shape is farther across than a 1:10000 drawing shows.</exception>
    public static ImmutableArray<Sheet> Draw(Kit kit, TitleFields title)
    {
        ImmutableArray<Table> tables = [.. KitTables.All(kit).Select(Ruled), .. Numbered("Steps", kit.Steps), .. Numbered("Cautions", [.. kit.Cautions.Select(c => c.Words)])];
        var block = title with { Spreads = false };
        var seen = Picture(kit);
        foreach (var scale in DrawingScale.Worth(Math.Max(seen.Width, seen.Height)))
        {
            var marks = seen.Marks.Select(m => Move.Scaled(m, scale.Factor)).ToList();
            var bounds = new Box(0, 0, seen.Width * scale.Factor, seen.Height * scale.Factor);
            if (Layout.Best(s_papers, bounds, tables, block) is { } layout) return layout.Draw(marks, bounds, tables, block, scale, "mm");
        }
        throw new RefusedException(Refusal.Of("shape", $"{seen.Width:0} × {seen.Height:0} mm", "it is too large to draw"));
    }

    /// <summary>The finished shape, else its largest piece flat.</summary>
    static PictorialView Picture(Kit kit)
    {
        if (kit.Shape is { Facets.Length: > 0 } shape) return PictorialDrawing.Draw(shape, Axonometry.Isometric);
        if (kit.Formers is [var former, ..]) return PictorialDrawing.Draw(former.Shape, Axonometry.Isometric);
        if (kit.Pieces.IsEmpty) return new([], 1, 1);
        var sheet = kit.Pieces.MaxBy(p => p.Area)!.ToSheet(margin: 0);
        return new([.. sheet.Marks.Where(m => m is not TextMark)], sheet.Width, sheet.Height);
    }

    static Table Ruled(Listing listing)
    {
        var rows = listing.Rows.Length <= MostRows ? listing.Rows
            : [.. listing.Rows.Take(MostRows), [.. listing.Heads.Select((_, i) => i == 0 ? $"and {listing.Rows.Length - MostRows} more in the list file" : "")]];
        ImmutableArray<Column> columns = [.. listing.Heads.Select(h => new Column(h))];
        var table = new Table(listing.Title, columns, rows);
        if (table.Width <= Widest || rows.IsEmpty) return table;
        // Columns wider than an even share are broken to one width; the narrow ones keep theirs.
        var widths = columns.Select((c, i) => rows.Select(r => r[i]).Append(c.Heading).Max(t => Letter.Width(t, Letter.Small))).ToList();
        var most = Share(widths, Widest - (table.Width - widths.Sum()));
        return new(listing.Title, columns, [.. rows.Select(r => r.Select((t, i) => widths[i] <= most ? t : string.Join('\n', Letter.Lines(t.Replace('\n', ' '), most, Letter.Small))).ToImmutableArray())]);
    }

    /// <summary>The width at which the columns, none wider, fill a room.</summary>
    static double Share(List<double> widths, double room)
    {
        var (left, share) = (room, 0.0);
        foreach (var (width, i) in widths.Order().Select((w, i) => (w, i)))
        {
            share = left / (widths.Count - i);
            if (width > share) break;
            left -= width;
        }
        return Math.Max(share, 18);
    }

    static IEnumerable<Table> Numbered(string title, ImmutableArray<string> sentences)
    {
        if (sentences.IsEmpty) return [];
        return [new Table(title, [new("", Anchor.Right), new("")], [.. sentences.Select((s, i) => (ImmutableArray<string>)[$"{i + 1}", string.Join('\n', Letter.Lines(s, 100, Letter.Small))])])];
    }
}
