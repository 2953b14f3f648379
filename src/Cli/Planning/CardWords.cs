using WitnessMark.FrontOffice.CardJob;
using WitnessMark.PlanningOffice;

namespace WitnessMark.Cli.Planning;

/// <summary>A job card in words.</summary>
static class CardWords
{
    public static void Write(TextWriter to, CardResult result, List<string> files)
    {
        var card = result.Card;
        to.WriteLine($"{card.Title}, {card.Quantity} off");
        foreach (var stock in card.Stock) to.WriteLine($"buy: {stock.Words}, {Money(stock.Cost)}");
        foreach (var step in card.Steps)
        {
            to.WriteLine($"{step.Number,2}. {step.Title} ({step.Tool}): {Hours(step.Hours)}");
            if (step.SentOut is { } sent) to.WriteLine($"    send out: {sent.Why}");
        }
        to.WriteLine($"hours {Hours(card.Hours)}; money {Money(card.Cost)} (low, likely, high)");
        foreach (var caution in result.Cautions) to.WriteLine($"! {caution}");
        foreach (var file in files) to.WriteLine(file);
    }

    static string Hours(ThreePoint h) => $"{h.Low:0.0} / {h.Likely:0.0} / {h.High:0.0} h";

    static string Money(Cost c) => $"{c.Low:0.00} / {c.Likely:0.00} / {c.High:0.00} {c.Currency}";
}
