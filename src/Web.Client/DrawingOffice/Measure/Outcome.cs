using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.Web.Client.DrawingOffice.Measure;

/// <summary>An entry as understood, or why it does not count.</summary>
public sealed record ReadEntry(ReadingEntry Entry, Reading? Reading, string? Why, ReadingResult? Result);

/// <summary>What came of the readings so far.</summary>
/// <param name="Sample">As understood; null until there is a feature.</param>
/// <param name="Plan">Null while there is nothing to adjust. Second shapes are looked for afterwards: that takes far longer than the plan.</param>
/// <param name="Why">Why the readings together make no plan.</param>
public sealed record Outcome(ImmutableArray<ReadEntry> Read, Sample? Sample, Plan? Plan, string? Why)
{
    /// <summary>How long the adjustment took, ms.</summary>
    public double Milliseconds { get; init; }

    public static Outcome Nothing { get; } = new([], null, null, null);

    /// <summary>Understands every standing entry and adjusts the plan from those that count.</summary>
    public static Outcome Of(PartSample sample, SampleSketch sketch, ImmutableArray<ReadingEntry> standing, ImmutableArray<OwnedInstrument> owned, TimeProvider clock)
    {
        try
        {
            var stored = StoredSample.Of(sample, sketch, standing, owned);
            var began = clock.GetTimestamp();
            var plan = stored.Sample is { Readings.Length: > 0 } s ? Adjust.Solve(s, searchMirrors: false) : null;
            var took = clock.GetElapsedTime(began).TotalMilliseconds;
            var index = stored.Entries.Select((id, i) => (id, i)).ToDictionary(x => x.id, x => x.i);
            var why = stored.Refused.ToLookup(r => r.Row, r => r.Sentence);
            return new([.. standing.Select(Entry)], stored.Sample, plan, null) { Milliseconds = took };

            ReadEntry Entry(ReadingEntry e) => index.TryGetValue(e.Id, out var i)
                ? new(e, stored.Sample!.Readings[i], null, Result(plan, i))
                : new(e, null, why[e.Id.ToString()].FirstOrDefault(), null);

            // The figures of the believed plan, the verdict of the whole.
            static ReadingResult? Result(Plan? plan, int i) => plan is null ? null : plan.Believed.Readings[i] with { Doubtful = plan.Readings[i].Doubtful };
        }
        catch (RefusedException e)
        {
            return new([.. standing.Select(entry => new ReadEntry(entry, null, null, null))], null, null, e.Message);
        }
    }
}
