using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Judging;

namespace WitnessMark.FrontOffice.CompareRoutes;

/// <summary>
/// Certainty and originality. Values of common practice, set down to be argued with: each comes with its reason, and what is
/// known of the part moves them.
/// </summary>
static class RouteScores
{
    /// <summary>Chance that it turns out right the first time.</summary>
    public static Score Certainty(CompareRequest r, RouteJobs jobs) => jobs.Route switch
    {
        Route.Clean => Own(r.Grade, "cleaning adds nothing that can go wrong", 0.95, 0.9, 0.5, 0.15, 0.75),
        Route.Refurbish => Own(r.Grade, "repair shows what the dirt hid", 0.95, 0.9, 0.8, 0.45, 0.65),
        Route.Remake => Remade(r, jobs.Card),
        Route.BuyNew => Usual(0.8, "bought parts often want altering"),
        Route.BuySecondHand => Usual(0.6, "another vehicle's part has a life of its own behind it"),
        _ => r.Grade is ConditionGrade.Lost
            ? Usual(0.6, "there is little left for the firm to work from")
            : Usual(0.8, "the firm does it every day; pieces get lost and wishes misread"),
    };

    /// <summary>1: the part the vehicle left the works with.</summary>
    public static Score Originality(CompareRequest r, Route route) => route switch
    {
        Route.Clean => Usual(1, "the very part, as it was"),
        Route.Refurbish => Usual(0.9, "the very part, with new metal in it"),
        Route.SendOut => Usual(0.85, "the very part, with a new surface or new insides"),
        Route.BuySecondHand => Usual(0.7, "of the same make, from another vehicle"),
        Route.Remake when r.Samples.IsEmpty => Usual(0.35, "a copy, with no sample to copy"),
        Route.Remake => Usual(0.45, "a copy of an original that was measured"),
        _ => Usual(0.3, "a maker's pattern of today"),
    };

    /// <param name="ungraded">While nobody has graded it.</param>
    static Score Own(ConditionGrade? grade, string why, double asNew, double sound, double worn, double poor, double ungraded) => grade switch
    {
        ConditionGrade.AsNew => Usual(asNew, $"{why}; it is as new"),
        ConditionGrade.Sound => Usual(sound, $"{why}; it is sound"),
        ConditionGrade.Worn => Usual(worn, $"{why}; it is worn"),
        ConditionGrade.Poor => Usual(poor, $"{why}; it is poor"),
        null => Usual(ungraded, $"{why}; it is not graded"),
        _ => Usual(0, "there is nothing to work on"),
    };

    static Score Remade(CompareRequest r, Job? card)
    {
        var missing = r.Samples.IsEmpty ? 0 : r.Samples.Min(s => s.StillMissing);
        return (card, r.Samples.IsEmpty, missing) switch
        {
            (not null, _, 0) => Usual(0.85, "drawn, and a card is written"),
            (not null, _, _) => Usual(0.75, "a card is written, but readings of the sample are missing"),
            (_, false, 0) => Usual(0.75, "the sample is read, not drawn yet"),
            (_, false, _) => Usual(0.6, "the sample is not read to the end"),
            _ => Usual(0.5, "there is neither a drawing nor a sample"),
        };
    }

    static Score Usual(double value, string why) => new(value, why, Rate.CommonPractice);
}
