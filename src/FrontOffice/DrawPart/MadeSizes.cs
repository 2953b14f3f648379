using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.DrawPart;

/// <summary>Made-to sizes of everything on one plan. What its holes say of the origin counts for its distances.</summary>
public sealed class MadeSizes
{
    /// <summary>mm: a distance nearer to nothing has no made-to size.</summary>
    const double Shortest = 1;

    readonly Plan _plan;
    readonly Func<Span, double?> _std;
    readonly OriginPrior _prior;
    readonly ImmutableDictionary<string, MadeTo> _features;

    MadeSizes(Plan plan, Func<Span, double?> std, OriginPrior prior, ImmutableDictionary<string, MadeTo> features) =>
        (_plan, _std, _prior, _features) = (plan, std, prior, features);

    /// <summary>Each hole, slot and arc with its verdict, in the plan's order.</summary>
    public IEnumerable<(string Id, MadeTo MadeTo)> Features =>
        from f in _plan.Features
        where _features.ContainsKey(f.Id)
        select (f.Id, _features[f.Id]);

    /// <param name="std">Standard uncertainty of a span, mm.</param>
    public static MadeSizes Of(Plan plan, Func<Span, double?> std, OriginPrior prior)
    {
        var asked = plan.Features.Select(Asked).OfType<Question>().ToImmutableArray();
        if (asked.IsEmpty) return new(plan, std, prior, ImmutableDictionary<string, MadeTo>.Empty);
        var family = Identify.Together(asked, prior);
        var believed = prior with { Origins = [.. prior.Origins.Select(o => o with { Weight = family.Origins.First(p => p.Name == o.Name).Probability })] };
        return new(plan, std, believed, family.Members.ToImmutableDictionary(m => m.Question.Label));
    }

    /// <summary>As it is called for on a drawing; null where it is not told.</summary>
    public string? OfFeature(string id) => _features.GetValueOrDefault(id) is { Told: true, Best: { } best }
        ? best.Name : null;

    /// <summary>The size itself, mm; null where it is not told.</summary>
    public double? MmOf(string id) => _features.GetValueOrDefault(id) is { Told: true, Best: { } best } ? best.Candidate.Size : null;

    /// <summary>The same for a distance along an axis of the drawing.</summary>
    public string? Between(Span span)
    {
        if (span.Value < Shortest || _std(span) is not { } std || std <= 0) return null;
        var subject = IsHole(span.From) || IsHole(span.To) ? Subject.HolePitch : Subject.Length;
        var question = Question.Of(subject, new Measured(Facet.Size, new Uncertain(span.Value, std)));
        return Usable(question) && Identify.One(question, _prior) is { Told: true, Best: { } best } ? best.Name : null;
    }

    bool IsHole(string? id) => id is not null && _plan.Features.Any(f => f.Id == id && f.Kind is FeatureKind.Hole or FeatureKind.Slot);

    static Question? Asked(Placed f)
    {
        if (f is not { Loose: false, Size: { Value: > 0, Std: > 0 } size }) return null;
        var subject = f.Kind == FeatureKind.Arc ? Subject.Radius : Subject.Hole;
        var question = new Question(subject, [new Measured(Facet.Size, size)], f.Id);
        return Usable(question) ? question : null;
    }

    /// <summary>A size too poorly known to tell sizes apart is left without a verdict rather than refused.</summary>
    static bool Usable(Question question)
    {
        try
        {
            question.Checked();
            return true;
        }
        catch (RefusedException)
        {
            return false;
        }
    }
}
