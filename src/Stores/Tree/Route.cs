namespace WitnessMark.Stores;

/// <summary>How a part is made good.</summary>
public enum Route { Clean, Refurbish, Remake, BuyNew, BuySecondHand, SendOut }

/// <summary>A route with the reason it was taken for, so that it can be judged again when the facts change.</summary>
public sealed record RouteDecision(Route Route, string Reason, DateOnly On);

/// <summary>A route as people write it: "buy second-hand".</summary>
public static class Routes
{
    static readonly (Route Route, string Words)[] Spelled =
    [
        (Route.Clean, "clean"), (Route.Refurbish, "refurbish"), (Route.Remake, "remake"),
        (Route.BuyNew, "buy new"), (Route.BuySecondHand, "buy second-hand"), (Route.SendOut, "send out"),
    ];

    public static string Words(this Route route) => Spelled.First(s => s.Route == route).Words;

    /// <summary>The route written so, or null.</summary>
    public static Route? Read(string text)
    {
        var plain = text.Trim().ToLowerInvariant().Replace('-', ' ');
        foreach (var (route, words) in Spelled)
            if (words.Replace('-', ' ') == plain) return route;
        return null;
    }

    /// <summary>All spellings, for a sentence that says what would be right.</summary>
    public static string All => string.Join(", ", Spelled.Select(s => s.Words));
}
