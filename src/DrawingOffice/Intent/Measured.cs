using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Words;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>One measured size. Repeats of the same place belong averaged into one.</summary>
/// <param name="Value">mm, or radians of an angle or flank.</param>
/// <param name="Item">
/// Which of several equal holes, pins or sheets. Readings of one item share its making error; each place has its own wear.
/// </param>
public sealed record Measured(Facet Facet, Uncertain Value, Condition Condition = Condition.Unknown, string Item = "")
{
    public Coat? Coat { get; init; }

    /// <summary>Pitch from a length over so many threads.</summary>
    /// <param name="length">Crest to crest, mm.</param>
    public static Measured PitchOver(int threads, Uncertain length)
    {
        if (threads < 1) throw new RefusedException(Refusal.Of("threads counted", $"{threads}", "it must be 1 or more"));
        return new Measured(Facet.Pitch, new Uncertain(length.Value / threads, length.Std / threads));
    }

    /// <summary>
    /// Pitch by the leaf of a pitch gauge that fitted. A misfit shows at about 0.1 mm over the length held (half-width,
    /// rectangular, JCGM 100 4.3.7; common practice).
    /// </summary>
    /// <param name="pitch">Pitch of the leaf, mm.</param>
    /// <param name="held">Length of thread that the leaf lay on, mm.</param>
    public static Measured PitchByGauge(double pitch, double held)
    {
        if (!(held >= pitch && double.IsFinite(held)))
            throw new RefusedException(Refusal.Of("length held", $"{held:0.###} mm", "it must be at least one pitch"));
        return new Measured(Facet.Pitch, new Uncertain(pitch, pitch / held * 0.1 / Math.Sqrt(3)));
    }
}

/// <summary>What was it made to? All measurements are of one made-to size, on one item or on several equal ones.</summary>
/// <param name="Label">Names the question in a family and in refusals.</param>
public sealed record Question(Subject Subject, ImmutableArray<Measured> Measurements, string Label = "")
{
    // Longer than any vehicle, mm.
    const double Longest = 100_000;

    public static Question Of(Subject subject, params ReadOnlySpan<Measured> measurements) => new(subject, [.. measurements]);

    /// <summary>The facet that says how big the thing is: the outside diameter, or the core where only that was measured.</summary>
    public Facet Principal => Measurements.Any(m => m.Facet == Facet.Size) ? Facet.Size : Facet.Core;

    /// <summary>Throws <see cref="RefusedException"/> with one sentence when a measurement cannot be used.</summary>
    public Question Checked()
    {
        if (Measurements.IsDefault || !Measurements.Any(m => m.Facet is Facet.Size or Facet.Core))
            throw Refused("size", null, "a diameter, thickness or distance must be measured before a size can be named");
        foreach (var m in Measurements) Check(m);
        return this;
    }

    void Check(Measured m)
    {
        var (field, value, std) = (m.Facet.ToString().ToLowerInvariant(), m.Value.Value, m.Value.Std);
        if (!(value > 0 && value <= Longest)) throw Refused(field, $"{value}", $"it must be above 0 and at most {Longest:0} mm");
        if (!(std > 0 && double.IsFinite(std))) throw Refused($"± of {field}", $"{std}", "it must be a positive number");
        // Beyond these every size near would do as well as the next.
        if (std > value / 4 || std > 5) throw Refused($"± of {field}", $"{std:0.###}", $"it must be below a quarter of {value:0.###} and below 5 to tell sizes apart");
        if (!Enum.IsDefined(m.Condition)) throw Refused("condition", $"{m.Condition}", "it must be one of " + string.Join(", ", Enum.GetNames<Condition>()));
        if (m.Coat is { } coat && !(coat.Thickness >= 0 && coat.Std >= 0 && 2 * (coat.Thickness + coat.Std) < value))
            throw Refused("coat", $"{coat.Thickness} ± {coat.Std}", $"it must be 0 or more, and on both faces less than {value:0.###}");
        if (!Practice.Measurable(Subject, m.Facet)) throw Refused(field, $"{value:0.###}", $"{Sentences.Of(Subject)} has no {field} that can be measured");
    }

    RefusedException Refused(string field, string? value, string wanted) =>
        new(Refusal.Of(Label == "" ? field : $"{Label}, {field}", value, wanted));
}
