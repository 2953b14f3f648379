using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Tags;
using WitnessMark.Stores.Outwork;

namespace WitnessMark.Web.Client.Stores;

/// <summary>The list that goes into the box, on A4, and the copy that stays: same lines, with room to tick what came back.</summary>
public static class BoxList
{
    /// <summary>Margins, heights of lettering and the height of a row, mm.</summary>
    const double Margin = 15, Large = 5, Small = 2.5, Leading = 1.8;

    static readonly (string Head, double At, double Width)[] Columns =
        [("No.", 0, 9), ("What", 10, 62), ("Finish", 74, 44), ("Stays bare", 120, 34), ("Out", 156, 10), ("Back", 168, 12)];

    public static PrintOut Pdf(Consignment box, string firm, string vehicle, DateTimeOffset? created) =>
        PrintOut.Pdf($"box-{box.Out:yyyy-MM-dd}", [.. Sheets(box, firm, vehicle, "goes into the box"), .. Sheets(box, firm, vehicle, "stays here")], created);

    static IEnumerable<Sheet> Sheets(Consignment box, string firm, string vehicle, string copy)
    {
        var pages = new List<List<Mark>>();
        List<Mark> page = [];
        var y = 0.0;
        void Turn()
        {
            pages.Add(page = []);
            y = PaperSize.A4.Height - Margin - Large;
            Write(page, 0, y, $"{Sentences.Begin(Trades.Words(box.Trade)).TrimEnd('.')}, {firm}", Large);
            Write(page, 0, y -= Leading * Large, string.Create(CultureInfo.InvariantCulture, $"{vehicle}; out {box.Out:yyyy-MM-dd}; this copy {copy}; page {pages.Count}"), Small);
            y -= Leading * Small;
            foreach (var (head, at, _) in Columns) Write(page, at, y, head, Small);
            Rule(page, y -= Small);
        }
        void Row(IReadOnlyList<ImmutableArray<string>> cells)
        {
            var deep = Math.Max(1, cells.Max(c => c.Length)) * Leading * Small;
            if (y - deep < Margin) Turn();
            for (var c = 0; c < cells.Count; c++)
                for (var n = 0; n < cells[c].Length; n++) Write(page, Columns[c].At, y - (n + 1) * Leading * Small, cells[c][n], Small);
            Rule(page, y -= deep + Small);
        }
        void Say(string text)
        {
            foreach (var line in Fit.Lines(text, Small, PaperSize.A4.Width - 2 * Margin))
            {
                if (y - Leading * Small < Margin) Turn();
                Write(page, 0, y -= Leading * Small, line, Small);
            }
            y -= Small;
        }
        Turn();
        foreach (var line in box.Lines)
            Row([.. new[] { $"{line.Number}", line.What, line.Finish, line.Masking, $"{line.Count}" }.Select((text, c) => Fit.Lines(text, Small, Columns[c].Width))]);
        Say($"In all {box.Lines.Sum(l => l.Count)} pieces. {box.Wanted}");
        foreach (var caution in OutCautions.For(box)) Say(caution);
        return pages.Select((marks, i) => new Sheet($"List for the box, {copy}, page {i + 1}", PaperSize.A4.Width, PaperSize.A4.Height, [.. marks]));
    }

    static void Write(List<Mark> page, double x, double y, string text, double height) => page.Add(new TextMark(new Vec2(Margin + x, y), text, height, Layers.Text));

    static void Rule(List<Mark> page, double y) => page.Add(new LineMark(new Vec2(Margin, y), new Vec2(PaperSize.A4.Width - Margin, y), Layers.Text, Stroke.Thin));
}
