using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample.Json;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>Readings in, true plan out.</summary>
public sealed record MeasureRequest(Sample Sample)
{
    /// <summary>Also look for second shapes that fit as well; costs several adjustments.</summary>
    public bool SearchMirrors { get; init; } = true;

    /// <summary>Also look for the readings worth taking next.</summary>
    public bool Advise { get; init; } = true;

    /// <summary>Wanted ± of every dimension (19 in 20), mm.</summary>
    public double WantedPlusMinus { get; init; } = 0.1;
}

/// <summary>What the readings say, and what to be careful of.</summary>
/// <param name="Next">Null when it was not asked for.</param>
public sealed record MeasureResult(Sample Sample, Plan Plan, NextAdvice? Next, ImmutableArray<string> Cautions)
{
    /// <summary>One JSON object, mm and radians; the fields are listed in docs/guide/command-line.md.</summary>
    public string ToJson() => AnswerJson.Write(this);
}

/// <summary>The first thing a person does: measure a sample and see the plan come true.</summary>
public static class MeasureSample
{
    /// <summary>Free motions past which a plan would take seconds and say nothing: 200 holes that nothing ties.</summary>
    const int MostLoose = 600;

    /// <exception cref="RefusedException">The sample is not one that can be adjusted.</exception>
    public static MeasureResult Run(MeasureRequest request, CancellationToken stop = default)
    {
        CheckReadings(request.Sample);
        var plan = Adjust.Solve(request.Sample, request.SearchMirrors, stop);
        var next = request.Advise ? Next.Advise(plan.Believed, request.WantedPlusMinus / 2, stop: stop) : null;
        return new MeasureResult(request.Sample, plan, next, [.. Cautions(request.Sample, plan)]);
    }

    /// <summary>Each reading ties one freedom at best; a picked place ties two.</summary>
    static void CheckReadings(Sample sample)
    {
        var unknown = sample.Features.Sum(Unknowns);
        var tied = sample.Readings.Sum(r => r.Kind == ReadingKind.Picked ? 2 : 1);
        if (unknown - tied <= MostLoose) return;
        throw new RefusedException(Refusal.Of("readings", $"{sample.Readings.Length}",
            $"{unknown} places and sizes are unknown; take at least {unknown - tied - MostLoose} more before it is adjusted, or name fewer features"));
    }

    static int Unknowns(Feature f) => f.Kind switch
    {
        FeatureKind.Point => 2,
        FeatureKind.Edge => f.From is null ? 2 : 0,
        FeatureKind.Slot => 5,
        _ => 3,
    };

    static IEnumerable<string> Cautions(Sample sample, Plan plan)
    {
        if (!plan.Convergence.Converged) yield return plan.Convergence.Words;
        if (!plan.Doubts.Indices.IsEmpty) yield return plan.Doubts.Words;
        if (plan is { Redundancy: > 0, Global.Passes: false } && plan.Doubts.Indices.IsEmpty)
            yield return $"The readings fit one another {(plan.Global.Statistic > plan.Global.High ? "worse" : "better")} than their instruments allow; look at the stated ± before trusting the figures.";
        if (plan.Redundancy == 0) yield return "Nothing checks these readings: a misread one would go unseen. Take a few more.";
        foreach (var sentence in WearWords.Cautions(sample, plan)) yield return sentence;
        foreach (var group in plan.Loose)
            yield return $"Loose: {string.Join(", ", group.Ids)}; {group.Reason}.";
        foreach (var mirror in plan.Mirrors)
            yield return $"A second shape fits as well: {string.Join(", ", mirror.Flips)} may lie on the other side{(mirror.About.IsEmpty ? "" : $" of the line through {string.Join(" and ", mirror.About)}")}."
                + (mirror.Deciding.IsEmpty ? "" : $" The distance {mirror.Deciding[0].From} to {mirror.Deciding[0].To} decides.");
    }
}
