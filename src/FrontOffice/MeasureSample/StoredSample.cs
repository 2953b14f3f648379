using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample.Sheet;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>Why one stored row does not count.</summary>
/// <param name="Row">Id of the feature or of the reading entry.</param>
public sealed record RowRefusal(string Row, string Sentence);

/// <summary>
/// A sample made of what the stores keep: its sketch, its standing readings and the person's instruments. A bad row is told
/// and left out; the others count, since a person types one row after another. Sizes to identify are no part of the survey.
/// </summary>
/// <param name="Sample">Null until there is a feature.</param>
/// <param name="Entries">The entry of each reading, by its index.</param>
public sealed record StoredSample(Sample? Sample, ImmutableArray<Guid> Entries, ImmutableArray<RowRefusal> Refused)
{
    public static StoredSample Of(
        PartSample sample, SampleSketch? sketch, IReadOnlyList<ReadingEntry> standing, IReadOnlyList<OwnedInstrument> owned, bool inches = false)
    {
        var draft = new SampleDraft();
        var refused = ImmutableArray.CreateBuilder<RowRefusal>();
        foreach (var feature in sketch?.Features ?? [])
            Try(feature.Id, refused, () => draft.Add(FeatureOf(feature), Place.None));

        var instruments = InstrumentList.Usual();
        foreach (var own in owned) instruments[own.Name] = new Instrument(own.Name, own.Resolution, own.StatedError, own.Repeatability, own.ReadsAngle);
        var spelling = SheetSpelling.Of(inches);
        var entries = ImmutableArray.CreateBuilder<Guid>();
        foreach (var entry in standing.Where(IsFrame)) Try(entry.Id.ToString(), refused, () => draft.Add(ReadingSheet.FrameOf(new(0, entry.From.Trim(), entry.Value.Trim())), Place.None));
        foreach (var entry in standing.Where(e => !StoredSizes.IsOne(e) && !IsFrame(e)))
        {
            Try(entry.Id.ToString(), refused, () =>
            {
                draft.Add(ReadingSheet.ReadingOf(Typed(entry), draft.NextIndex, spelling, instruments, Place.None), Place.None);
                entries.Add(entry.Id);
            });
        }
        return new StoredSample(draft.IsEmpty ? null : draft.Finish(sample.Id.ToString(), sample.Title, Place.None), entries.ToImmutable(), refused.ToImmutable());
    }

    /// <summary>The sentence that tells what is wrong with one entry against the sketch as it stands; null when nothing is.</summary>
    public static string? Check(PartSample sample, SampleSketch? sketch, ReadingEntry entry, IReadOnlyList<OwnedInstrument> owned, bool inches = false) =>
        StoredSizes.IsOne(entry) ? StoredSizes.Check(entry)
            : Of(sample, sketch, [entry], owned, inches).Refused.FirstOrDefault(r => r.Row == entry.Id.ToString())?.Sentence;

    /// <summary>Kind of an entry that says how true the scale of a frame of picks is; its value is that ± in %.</summary>
    public const string FrameKind = "frame";

    static bool IsFrame(ReadingEntry entry) => string.Equals(entry.Kind.Trim(), FrameKind, StringComparison.OrdinalIgnoreCase);

    static void Try(string row, ImmutableArray<RowRefusal>.Builder refused, Action add)
    {
        try
        {
            add();
        }
        catch (RefusedException e)
        {
            refused.Add(new RowRefusal(row, e.Message));
        }
    }

    static Feature FeatureOf(SketchedFeature s) => new(s.Id, FeatureWords.Kind(s.Kind, "kind", Place.None))
    {
        From = ReadingSheet.Given(s.From.Trim()),
        To = ReadingSheet.Given(s.To.Trim()),
        Sketch = s is { X: { } x, Y: { } y } ? new Vec2(x, y) : null,
        SketchTurn = s.Turn,
        SketchSize = s.Size,
        SketchLength = s.Length,
        Condition = FeatureWords.Condition(s.Condition, "condition", Place.None),
        Wear = s.Wear,
    };

    /// <summary>A ± of its own counts instead of the instrument.</summary>
    static TypedReading Typed(ReadingEntry entry)
    {
        var own = entry.PlusMinus.Trim();
        var instrument = own.Length == 0 ? entry.Instrument.Trim() : own[0] is '±' or '+' ? own : $"± {own}";
        return new(0, entry.Kind, entry.From.Trim(), entry.To.Trim(), entry.Value.Trim(), instrument, entry.Note);
    }
}
