using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>What to measure a facet with.</summary>
/// <param name="Std">Standard uncertainty of the facet measured so, mm or radians.</param>
/// <param name="Threads">Threads to count over, for a pitch.</param>
sealed record Tool(string Name, double Std, int? Threads = null)
{
    const int MostThreads = 20;

    // A form gauge against the light, or a magnified picture: about 1°, common practice.
    static readonly Tool FormGauge = new("thread form gauge", Math.PI / 180);

    static readonly ImmutableArray<Tool> Straight = [Usual("rule"), Usual("calliper"), Usual("micrometer")];

    /// <summary>The roughest that is fine enough, or the finest there is.</summary>
    public static Tool For(Subject subject, Facet facet, double needed, double pitch) => (subject, facet) switch
    {
        (_, Facet.Flank) => FormGauge,
        (_, Facet.Pitch) => Counting(needed, pitch),
        (Subject.Angle, _) => Usual("protractor"),
        _ => Straight.FirstOrDefault(t => t.Std <= needed) ?? Straight[^1],
    };

    static Tool Counting(double needed, double pitch)
    {
        var gauge = new Tool("pitch gauge", Measured.PitchByGauge(pitch, Math.Max(10, pitch)).Value.Std);
        if (gauge.Std <= needed) return gauge;
        var calliper = Usual("calliper");
        var threads = (int)Math.Clamp(Math.Ceiling(calliper.Std / needed), 5, MostThreads);
        return calliper with { Std = calliper.Std / threads, Threads = threads };
    }

    static Tool Usual(string name) => new(name, Instrument.Usual.First(i => i.Name == name).StandardUncertainty());
}
