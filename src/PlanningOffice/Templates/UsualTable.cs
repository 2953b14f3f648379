using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice.Templates;

/// <summary>
/// The usual jobs of a careful amateur for one part that a person can lift, hours and days of common practice (low / likely /
/// high). They are starting values: the person edits them, and his own record beats them.
/// </summary>
public static class UsualTable
{
    public static TemplateTable Table { get; } = new("GBP", Build(), Adjust());

    static ImmutableDictionary<Route, ImmutableArray<JobTemplate>> Build() => new Dictionary<Route, ImmutableArray<JobTemplate>>
    {
        [Route.Clean] = [Off, Clean, Protect, Refit],
        [Route.Refurbish] = [Off, Look, Repair, TrialFit, Protect, Refit],
        [Route.Remake] = [Off, Survey, Make, TrialFit, Protect, Refit],
        [Route.BuyNew] = [Off, Buy("order and check on arrival", Rate.Common(7, 21, 60), Rate.Common(8, 25, 90), 0), Refit],
        [Route.BuySecondHand] = [Off, Buy("find, buy and check on arrival", Rate.Common(14, 60, 240), Rate.Common(10, 35, 140), 0), Protect, Refit],
        [Route.SendOut] = [Off, Send, Return, Refit],
    }.ToImmutableDictionary();

    static JobTemplate Off => Of("off", "take off", WorkKind.Strip, Rate.Common(0.3, 0.8, 3), 0.5, Needs.None with { Place = WorkPlace.Bay }) with
    {
        MayFind = [new("a fixing sheared or its seat rusted away", 0.2, Wet, 0.5, "refit", Rate.Common(0.5, 1.5, 5), Rate.Common(0, 4, 20))],
    };

    static JobTemplate Clean => Of("clean", "clean and look over", WorkKind.Clean, Rate.Common(0.4, 1, 3), 0.6, Needs.None with { Place = WorkPlace.Bench }) with
    {
        MayFind = [new("pitting or a crack under the dirt", 0.12, Wet, 0.6, "finish", Rate.Common(0.5, 2, 8), Rate.Common(0, 8, 40))],
    };

    static JobTemplate Look => Of("look", "clean, open up and look", WorkKind.Look, Rate.Common(0.5, 1.2, 3), 0.6, Needs.None with { Place = WorkPlace.Bench, Noisy = true }) with
    {
        MayFind =
        [
            new("rust deeper than it looked", 0.3, Wet, 0.7, "repair", Rate.Common(1, 4, 16), Rate.Common(0, 15, 80)),
            new("an old repair to be undone", 0.15, "", 0, "repair", Rate.Common(1, 3, 10), Rate.Common(0, 5, 30)),
        ],
    };

    static JobTemplate Survey => Of("survey", "measure and draw", WorkKind.Survey, Rate.Common(0.7, 1.5, 4), 0, Needs.None with { Place = WorkPlace.Bench });

    static JobTemplate Repair => Of("repair", "repair", WorkKind.Make, Rate.Common(1.5, 4, 12), 0.7, Needs.None with { Place = WorkPlace.Bench, Noisy = true }) with { Money = Rate.Common(2, 10, 40) };

    static JobTemplate Make => Of("make", "make", WorkKind.Make, Rate.Common(2, 5, 14), 0.5, Needs.None with { Place = WorkPlace.Bench, Noisy = true }) with
    {
        Money = Rate.Common(3, 10, 40),
        Leads = [new("stock", LeadSide.Before, Rate.Common(2, 6, 21), Rate.Common(0, 0, 0), 0)],
    };

    static JobTemplate TrialFit => Of("trial", "trial fit", WorkKind.FitUp, Rate.Common(0.4, 1, 4), 0.6, Needs.None with { Place = WorkPlace.Bay });

    static JobTemplate Protect => Of("finish", "prime and paint", WorkKind.Finish, Rate.Common(0.6, 1.5, 4), 0.4, Needs.None with { DryDay = true, Daylight = true }) with
    {
        Money = Rate.Common(2, 6, 15),
        Leads = [new("paint to harden", LeadSide.Behind, Rate.Common(2, 5, 14), Rate.Common(0, 0, 0), 0)],
    };

    static JobTemplate Refit => Of("refit", "refit", WorkKind.Refit, Rate.Common(0.4, 1.2, 4), 0.6, Needs.None with { Place = WorkPlace.Bay });

    static JobTemplate Send => Of("send", "list, photograph, pack and send out", WorkKind.Other, Rate.Common(0.5, 1, 2.5), 0.2, Needs.None) with
    {
        Leads = [new("outside work", LeadSide.Behind, Rate.Common(14, 35, 100), Rate.Common(20, 60, 220), 0.25)],
    };

    static JobTemplate Return => Of("return", "count and check on return", WorkKind.Look, Rate.Common(0.3, 0.5, 1.5), 0.3, Needs.None with { Place = WorkPlace.Bench }) with
    {
        MayFind = [new("a piece missing, or to go back", 0.08, "", 0, "return", Rate.Common(0.5, 1, 3), Rate.Common(0, 5, 25))],
    };

    static JobTemplate Buy(string does, Rate days, Rate price, double deposit) =>
        Of("check", does, WorkKind.Look, Rate.Common(0.3, 0.7, 2), 0.3, Needs.None) with
        {
            Leads = [new("the part ordered", LeadSide.Before, days, price, deposit)],
            MayFind = [new("not like the old one, to be altered", 0.15, "", 0, "refit", Rate.Common(0.5, 1.5, 6), Rate.Common(0, 5, 30))],
        };

    static JobTemplate Adjust() => Of("adjust", "set and adjust", WorkKind.Adjust, Rate.Common(1, 3, 10), 0, Needs.None with { Place = WorkPlace.Bay, Helper = true });

    /// <summary>A vehicle that stood wet is wet everywhere.</summary>
    const string Wet = "wet";

    static JobTemplate Of(string key, string does, WorkKind kind, Rate hours, double eachMore, Needs needs) =>
        new(key, does, kind, hours, eachMore, Rate.Common(0, 0, 0), needs, [], []);
}
