using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Solid;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSolid.Json;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>Readings on a bracket or weldment in, its true shape out.</summary>
public sealed record SolidRequest(SolidSample Sample)
{
    /// <summary>Also look for second shapes that fit as well; costs several adjustments.</summary>
    public bool SearchMirrors { get; init; } = true;

    /// <summary>Also look for the readings worth taking next.</summary>
    public bool Advise { get; init; } = true;

    /// <summary>Wanted ± of every dimension (19 in 20), mm.</summary>
    public double WantedPlusMinus { get; init; } = 0.1;
}

/// <summary>What the readings say, and what to be careful of.</summary>
/// <param name="Part">The believed shape in the drawing's axes; null while the adjustment does not settle.</param>
/// <param name="Next">Null when it was not asked for.</param>
public sealed record SolidResult(SolidPlan Plan, SolidPart? Part, SolidAdvice? Next, ImmutableArray<string> Cautions)
{
    /// <summary>With the readings of faces that were surveyed flat behind its own.</summary>
    public SolidSample Sample => Plan.Sample;

    /// <summary>One JSON object, mm and radians; the fields are listed in docs/guide/survey-solid.md.</summary>
    public string ToJson() => SolidAnswer.Write(this);

    /// <summary>A reading as the person knows it: by its number from 1, and by its face where it was read flat.</summary>
    public string Name(int index) => Sample.Readings[index] is { FlatFace: { } face } flat ? $"reading {flat.FlatIndex + 1} on face {face}" : $"reading {index + 1}";
}

/// <summary>A bracket measured on the bench: points, holes, edges, faces and set-ups.</summary>
public static class MeasureSolid
{
    /// <summary>Free motions past which a plan would take long and say nothing.</summary>
    const int MostLoose = 300;

    /// <exception cref="RefusedException">The sample is not one that can be adjusted.</exception>
    public static SolidResult Run(SolidRequest request, CancellationToken stop = default)
    {
        CheckReadings(request.Sample);
        var plan = SolidAdjust.Solve(request.Sample, request.SearchMirrors, stop);
        var next = request.Advise && plan.Believed.Convergence.Converged ? SolidNext.Advise(plan.Believed, request.WantedPlusMinus / 2, stop: stop) : null;
        var part = plan.Believed.Convergence.Converged ? FromSolidPlan.Of(plan) : null;
        var bare = new SolidResult(plan, part, next, []);
        return bare with { Cautions = [.. Cautions(bare)] };
    }

    /// <summary>Each reading ties one freedom at best, a place picked on a face or a feature that lies on one some more.</summary>
    static void CheckReadings(SolidSample sample)
    {
        var unknown = sample.Features.Sum(f => f.Kind switch { SolidKind.Point or SolidKind.Plane or SolidKind.SetUp => 3, SolidKind.Hole => 6, SolidKind.Edge => f.From is null ? 4 : 0, _ => 5 });
        var tied = sample.Features.Count(f => f.On is not null) * 3 + sample.Readings.Length * 2 + sample.Faces.Sum(f => f.Sample.Readings.Length);
        if (unknown - tied <= MostLoose) return;
        throw new RefusedException(Refusal.Of("readings", $"{sample.Readings.Length}",
            $"{unknown} places, directions and sizes are unknown; take at least {(unknown - tied - MostLoose) / 2 + 1} more before it is adjusted, or name fewer features"));
    }

    static IEnumerable<string> Cautions(SolidResult result)
    {
        var plan = result.Plan;
        if (!plan.Believed.Convergence.Converged) yield return plan.Believed.Convergence.Words;
        if (!plan.Doubts.Indices.IsEmpty) yield return plan.Doubts.Words;
        foreach (var index in plan.Doubts.Alone)
        {
            var said = DoubtfulWords.Say(result, index);
            if (said.EndsWith('?')) yield return said;
            else if (!plan.Convergence.Converged) yield return $"{said}.";
        }
        if (plan is { Redundancy: > 0, Global.Passes: false } && plan.Doubts.Indices.IsEmpty)
            yield return $"The readings fit one another {(plan.Global.Statistic > plan.Global.High ? "worse" : "better")} than their instruments allow; look at the stated ± before trusting the figures.";
        if (plan.Redundancy == 0) yield return "Nothing checks these readings: a misread one would go unseen. Take a few more.";
        foreach (var group in plan.Believed.Loose)
            yield return $"Loose: {string.Join(", ", group.Ids)}; {group.Reason.TrimEnd('.')}.";
        foreach (var mirror in plan.Believed.Mirrors)
            yield return $"A second shape fits as well: {string.Join(", ", mirror.Flips)} may lie on the other side{(mirror.About.IsEmpty ? "" : $" of {string.Join(", ", mirror.About)}")}."
                + (mirror.Deciding.IsEmpty ? "" : $" The distance {mirror.Deciding[0].From} to {mirror.Deciding[0].To} decides.");
        if (!plan.Hand.Told) yield return plan.Hand.Words;
    }
}
