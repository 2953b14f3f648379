using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.PrintRoom;

namespace WitnessMark.PlanningOffice.Print;

/// <summary>The printed card of a job: what to buy and how it is laid, the steps with a box to tick, the cautions.</summary>
public static class JobCard
{
    const double Small = 2.5, Usual = 3.5, Large = 5;

    /// <summary>Columns of the step table, mm from the left of the sheet.</summary>
    const double Number = Pages.Left, Words = Pages.Left + 9, Hours = 186, Tick = 192, WordsEnd = 152;

    /// <param name="reference">The part's number or whatever it is known by.</param>
    /// <returns>A4 sheets, upright.</returns>
    public static ImmutableArray<Sheet> Sheets(RouteCard card, string reference, DateOnly printed)
    {
        var pages = new Pages($"Job card: {card.Title}");
        Head(pages, card, reference, printed);
        foreach (var stock in card.Stock) Stock(pages, stock);
        Steps(pages, card);
        Notes(pages, card);
        return pages.Sheets();
    }

    static void Head(Pages pages, RouteCard card, string reference, DateOnly printed)
    {
        pages.Text(card.Title, Large);
        pages.Space(1);
        pages.Beside($"{card.Quantity} off", Usual, Pages.Right, Anchor.Right);
        pages.Text(string.Create(CultureInfo.InvariantCulture, $"{(reference.Length > 0 ? $"{reference}; " : "")}printed {printed:yyyy-MM-dd}"), Usual, tone: Tone.Quiet);
        pages.Text($"Own hours {Span(card.Hours)}; money {Span(card.Cost)} (all low, all likely, all high).", Usual);
        pages.Space(2);
        pages.Rule(Stroke.Outline);
        pages.Space(4);
    }

    static void Stock(Pages pages, StockToBuy stock)
    {
        const double picture = 26;
        pages.Need(picture + 6);
        var top = pages.Y;
        pages.Text("To buy", Small, tone: Tone.Quiet);
        pages.Text(stock.Words, Usual, to: WordsEnd - 14);
        pages.Text($"{Figure(stock.Kilograms)} kg; {Span(stock.Cost)} ({stock.PriceSource})", Small, to: WordsEnd - 14);
        if (stock.Laying is { } laying)
        {
            Laid(pages, laying, top, picture);
            pages.Space(Math.Max(0, pages.Y - (top - picture)));
        }
        pages.Space(4);
    }

    /// <summary>The laid sheet, drawn small in the right margin of the stock block.</summary>
    static void Laid(Pages pages, Laying laying, double top, double room)
    {
        var scale = Math.Min(room / laying.Sheet.Height, 44 / laying.Sheet.Width);
        var (x, y) = (Pages.Right - scale * laying.Sheet.Width, top - scale * laying.Sheet.Height);
        foreach (var mark in laying.Picture().Marks.OfType<PathMark>())
            pages.Put(mark with { Points = [.. mark.Points.Select(p => scale * p + new Maths.Vec2(x, y))] });
    }

    static void Steps(Pages pages, RouteCard card)
    {
        pages.Rule(Stroke.Thin);
        pages.Space(1.5);
        pages.Beside("step", Small, Words, tone: Tone.Quiet);
        pages.Beside("hours", Small, Hours, Anchor.Right, Tone.Quiet);
        pages.Text(" done", Small, from: Tick - 4, tone: Tone.Quiet);
        var told = new HashSet<string>();
        foreach (var step in card.Steps) Row(pages, step, [.. step.Cautions.Where(told.Add)]);
        pages.Rule(Stroke.Thin);
    }

    /// <param name="cautions">Those that no step above has told yet.</param>
    static void Row(Pages pages, Step step, ImmutableArray<string> cautions)
    {
        pages.Need(HeightOf(step, cautions) + 4);
        pages.Rule(Stroke.Thin);
        pages.Space(2);
        Box(pages);
        pages.Beside($"{step.Number}", Usual, Number);
        pages.Beside(Span(step.Hours), Small, Hours, Anchor.Right);
        pages.Text(step.Title, Usual, Words, WordsEnd);
        pages.Text(Under(step), Small, Words, WordsEnd, step.SentOut is null ? Tone.Quiet : Tone.Warn);
        foreach (var caution in cautions) pages.Text($"! {caution}", Small, Words, WordsEnd, Tone.Warn);
        pages.Space(2);
    }

    static double HeightOf(Step step, ImmutableArray<string> cautions) =>
        Pages.HeightOf(step.Title, Usual, WordsEnd - Words) + Pages.HeightOf(Under(step), Small, WordsEnd - Words)
        + cautions.Sum(c => Pages.HeightOf($"! {c}", Small, WordsEnd - Words));

    static string Under(Step step) => step.SentOut is { } outside
        ? $"{step.Tool}. {outside.Why} {Span(outside.LeadDays)} days; {Span(step.Cost)}."
        : step.Tool;

    static void Box(Pages pages) => pages.Put(new PathMark(
        [new(Tick, pages.Y), new(Tick + 5, pages.Y), new(Tick + 5, pages.Y - 5), new(Tick, pages.Y - 5)],
        Closed: true, Filled: false, Layers.Frame, Stroke.Thin));

    static void Notes(Pages pages, RouteCard card)
    {
        pages.Space(4);
        foreach (var caution in card.Cautions) pages.Text($"! {caution}", Small, tone: Tone.Warn);
        pages.Text($"Hours are {string.Join(", ", card.Steps.SelectMany(s => s.HoursSource.Split(", ")).Distinct())}: edit the shop's rates as you learn your own. "
            + "The cautions remind; local codes, the makers' sheets and licensed practice decide.", Small, tone: Tone.Quiet);
    }

    static string Span(ThreePoint t) => $"{Figure(t.Low)} – {Figure(t.Likely)} – {Figure(t.High)}";

    static string Span(Cost c) => string.Create(CultureInfo.InvariantCulture, $"{c.Low:0.00} – {c.Likely:0.00} – {c.High:0.00} {c.Currency}");

    /// <summary>Two figures or so: more would be a pretence.</summary>
    static string Figure(double x) => x.ToString(x < 1 ? "0.##" : x < 10 ? "0.#" : "0", CultureInfo.InvariantCulture);
}
