using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Judging;

/// <summary>
/// The person decided a route. What the routes looked like at that moment stays with it, so that the choice can be judged by what
/// was known then. The standing route is the part's own <see cref="RouteDecision"/>.
/// </summary>
/// <param name="AsItStood">The whole comparison in words.</param>
public sealed record RouteChosen(
    Guid Id, Guid VehicleId, Guid PartId, Route Route, string Reason, string AsItStood, DateTimeOffset At, string Device) : IFact
{
    /// <summary>Longest comparison kept, characters; six routes take about 2,000.</summary>
    public const int LongestComparison = 20_000;

    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("part decided on", PartId) ?? Check.Known("route", Route) ?? Check.Named("reason for the route", Reason)
        ?? (AsItStood is null or { Length: > LongestComparison }
            ? Refusal.Of("comparison", $"{AsItStood?.Length ?? 0} characters", $"it may be empty and holds at most {LongestComparison} characters") : null);
}
