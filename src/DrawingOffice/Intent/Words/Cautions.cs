using System.Collections.Immutable;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Intent.Words;

/// <summary>What a person should know before acting on a made-to size.</summary>
static class Cautions
{
    const double Strange = 0.001;

    public static ImmutableArray<string> For(Question question, ImmutableArray<Ranked> ranked, double offList)
    {
        if (ranked.IsEmpty) return ["No listed size is anywhere near; check the units and the count of the readings."];
        var said = ImmutableArray.CreateBuilder<string>();
        var best = ranked[0];
        if (best.Tail < Strange && offList < 0.5)
            said.Add($"A reading lies farther from {best.Name} than making and wear explain (1 in {1 / Math.Max(best.Tail, 1e-9):#,0}); "
                + (question.Measurements.Select(m => m.Item).Distinct().Count() > 1 ? "these may not all be made to one size." : "measure again."));
        if (question.Subject is Subject.ExternalThread or Subject.InternalThread) AddThread(said, question, best);
        return said.ToImmutable();
    }

    static void AddThread(ImmutableArray<string>.Builder said, Question question, Ranked best)
    {
        if (Stretched(question, best))
            said.Add("The pitch reads long for this thread: a stretched stud does so, and must not go back.");
        if (Threads.Find(best.Name) is { } thread && LookAlikes.Of(thread) is { IsEmpty: false } alike)
            said.Add($"Easily taken for {Sentences.List(alike.Select(l => l.Other.Name), "or")}.");
        said.Add("Try the identified nut or bolt by fingers over its whole length before any spanner: one that starts and then binds is the wrong thread. "
            + "For steering, brakes and suspension have a competent person confirm it.");
    }

    static bool Stretched(Question question, Ranked best) =>
        question.Subject == Subject.ExternalThread && best.Candidate.Pitch is { } pitch
        && question.Measurements.Any(m => m.Facet == Facet.Pitch && m.Value.Value - pitch > 3 * m.Value.Std + 0.006 * pitch);
}
