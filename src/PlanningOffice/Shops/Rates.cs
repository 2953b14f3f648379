using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice;

/// <summary>
/// Minutes that work takes one person by hand, all editable. The usual figures are common practice for a first piece made
/// by a careful amateur; a person's own record beats them.
/// </summary>
/// <param name="SetUp">Once for each step.</param>
/// <param name="MarkOut">Each piece, template stuck on or scribed.</param>
/// <param name="Hole">Each hole: punched, drilled, countersunk clean.</param>
/// <param name="DeburrPerMetre">Of edge.</param>
/// <param name="Fold">Each bend in the folder.</param>
/// <param name="FoldInVice">Each bend hammered over in the vice.</param>
/// <param name="WeldPerMetre">Of seam, with fitting up and dressing.</param>
/// <param name="Turn">Each turned piece, without its threads.</param>
/// <param name="Thread">Each thread cut.</param>
/// <param name="FirstCopyCheck">Each piece measured against its drawing.</param>
/// <param name="Protect">Each piece degreased and primed.</param>
public sealed record Rates(
    Rate SetUp, Rate MarkOut, Rate Hole, Rate DeburrPerMetre, Rate Fold, Rate FoldInVice, Rate WeldPerMetre,
    Rate Turn, Rate Thread, Rate FirstCopyCheck, Rate Protect)
{
    // A shop that was kept before these rates existed reads back without them.
    /// <summary>Each former or setting tool sawn, shaped and tried.</summary>
    public Rate Former { get => field ?? Rate.Common(45, 120, 360); init; }

    /// <summary>Each piece rolled, beaded, flanged or pressed over tools.</summary>
    public Rate Form { get => field ?? Rate.Common(30, 75, 240); init; }

    /// <summary>Of edge or bend hammered over a former or rolled by hand, in stages.</summary>
    public Rate HammerPerMetre { get => field ?? Rate.Common(40, 90, 240); init; }

    /// <summary>Each plug weld, its hole and its dressing.</summary>
    public Rate PlugWeld { get => field ?? Rate.Common(3, 6, 15); init; }

    internal IEnumerable<Rate> All =>
        [SetUp, MarkOut, Hole, DeburrPerMetre, Fold, FoldInVice, WeldPerMetre, Turn, Thread, FirstCopyCheck, Protect, Former, HammerPerMetre, PlugWeld, Form];

    public static Rates Usual { get; } = new(
        SetUp: Rate.Common(5, 10, 20),
        MarkOut: Rate.Common(10, 20, 40),
        Hole: Rate.Common(2, 4, 10),
        DeburrPerMetre: Rate.Common(4, 8, 15),
        Fold: Rate.Common(4, 8, 20),
        FoldInVice: Rate.Common(10, 20, 45),
        WeldPerMetre: Rate.Common(60, 120, 240),
        Turn: Rate.Common(20, 45, 90),
        Thread: Rate.Common(8, 15, 35),
        FirstCopyCheck: Rate.Common(5, 10, 25),
        Protect: Rate.Common(15, 30, 60));
}

/// <summary>What things cost, in the shop's currency, all editable.</summary>
/// <param name="PerKilogram">Sheet and bar by material name, small lots.</param>
/// <param name="OtherPerKilogram">Any material not listed.</param>
/// <param name="ConsumablesPerHour">Blades, discs, wire, gas, paint for each hour of own work.</param>
/// <param name="Outside">Sent-out work by kind.</param>
public sealed record Prices(
    ImmutableDictionary<string, Rate> PerKilogram, Rate OtherPerKilogram, Rate ConsumablesPerHour,
    ImmutableDictionary<OutsideWork, OutsidePrice> Outside)
{
    public static Prices Usual { get; } = new(
        new Dictionary<string, Rate>
        {
            ["mild steel"] = Rate.Common(3, 5, 9),
            ["aluminium"] = Rate.Common(9, 14, 24),
            ["brass"] = Rate.Common(12, 18, 30),
        }.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase),
        Rate.Common(5, 10, 30),
        Rate.Common(0.5, 1.5, 4),
        Enum.GetValues<OutsideWork>().ToImmutableDictionary(w => w, _ => new OutsidePrice(Rate.Common(20, 45, 110), Rate.Common(3, 8, 25))));

    internal IEnumerable<Rate> All =>
        [OtherPerKilogram, ConsumablesPerHour, .. PerKilogram.Values, .. Outside.Values.SelectMany(o => new[] { o.EachOrder, o.LeadDays })];

    /// <summary>Material names are compared without case.</summary>
    public Rate MaterialPerKilogram(string material) =>
        PerKilogram.FirstOrDefault(p => string.Equals(p.Key, material, StringComparison.OrdinalIgnoreCase)).Value ?? OtherPerKilogram;
}

/// <summary>Kinds of work that can be sent out.</summary>
public enum OutsideWork { Cutting, Drilling, Folding, Welding, Turning }

/// <param name="EachOrder">Money for one small order.</param>
/// <param name="LeadDays">Calendar days until it is back.</param>
public sealed record OutsidePrice(Rate EachOrder, Rate LeadDays);
