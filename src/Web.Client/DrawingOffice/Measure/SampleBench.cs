using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Web.Client.BackRoom;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.DrawingOffice.Measure;

/// <summary>One sample on the bench: its sketch, its readings as written, and the plan they make.</summary>
public sealed class SampleBench : IDisposable
{
    readonly Tray _tray;
    readonly Desk _desk;
    readonly TimeProvider _clock;
    readonly List<ReadingEntry> _entries = [];
    ImmutableArray<ReadEntry> _sizes = [];
    CancellationTokenSource? _stop;
    readonly List<Withdrawal> _withdrawals = [];
    readonly string _device;

    SampleBench(BenchFile file, Tray tray, string device, Desk desk, TimeProvider clock)
    {
        (_tray, _device, _desk, _clock) = (tray, device, desk, clock);
        (Sketch, Folded) = (new(tray.Sketch(file.Sketch)), tray.Folded(file.Folded));
        Sample = file.Sample.Row;
        Owned = file.Instruments;
        _entries.AddRange(file.History.Readings);
        _withdrawals.AddRange(file.History.Withdrawals);
        Take();
        Work();
        tray.Changed += Told;
        Sketch.Decision.Changed += Told;
        Folded.Changed += Told;
    }

    public PartSample Sample { get; }

    /// <summary>The person's own instruments.</summary>
    public ImmutableArray<OwnedInstrument> Owned { get; }

    /// <summary>All that was ever written, but what the host refused.</summary>
    public ReadingHistory History => new([.. _entries.Where(e => _tray.Refusal(e.Id) is null)], [.. _withdrawals]);

    public SketchBook Sketch { get; }

    /// <summary>The folded part as typed.</summary>
    public Decision<FoldedPart> Folded { get; }

    /// <summary>Names to choose from, and whether the instrument reads angles.</summary>
    public IEnumerable<(string Name, bool ReadsAngle)> Instruments =>
        Instrument.Usual.Select(i => (i.Name, i.ReadsAngle)).Concat(Owned.Select(i => (i.Name, i.ReadsAngle))).DistinctBy(i => i.Name, StringComparer.OrdinalIgnoreCase);

    /// <summary>Readings of the plan.</summary>
    public ImmutableArray<Line> Lines { get; private set; } = [];

    /// <summary>Sizes to identify: threads, pins, sheet.</summary>
    public ImmutableArray<Line> Sizes { get; private set; } = [];

    public ImmutableArray<Feature> Features => Sketch.Features;

    public Outcome Outcome { get; private set; } = Outcome.Nothing;

    public Plan? Plan => Outcome.Plan;

    /// <summary>What to read next; null while there is no plan, or it is still being worked out.</summary>
    public NextAdvice? Advice { get; private set; }

    /// <summary>Other shapes that fit as well are being looked for.</summary>
    public bool Searching { get; private set; }

    /// <summary>The ± that every dimension is to have (19 of 20), mm.</summary>
    public double Wanted { get; private set; } = 0.1;

    public event Action? Changed;

    /// <param name="device">What this device is called in the readings taken on it.</param>
    public static SampleBench Open(BenchFile file, Tray tray, string device, Desk desk, TimeProvider clock) => new(file, tray, device, desk, clock);

    /// <summary>Writes the reading down when it can be understood and kept; else says why not, and nothing is kept.</summary>
    /// <param name="note">Where it comes from, when it was not typed.</param>
    public Task<string?> Append(string kind, string from, string to, string value, string instrument, string note = "") =>
        Append(Entry(kind, from, to, value, instrument) with { Note = note }, e => StoredSample.Check(Sample, Sketch.Row, e, Owned));

    /// <summary>The same for a size that is to be identified.</summary>
    public Task<string?> AppendSize(string kind, string item, string condition, string value, string instrument) =>
        Append(Entry(kind, item, condition, value, instrument), e => !StoredSizes.IsOne(e) ? Refusal.Of("what is measured", e.Kind, "choose one of the list").Sentence
            : e.From.Length == 0 ? Refusal.Of("of which", e.From, "give the thing a short name such as stud").Sentence : StoredSizes.Check(e));

    async Task<string?> Append(ReadingEntry entry, Func<ReadingEntry, string?> check)
    {
        if ((check(entry) ?? await _tray.Append(entry)) is { } refusal) return refusal;
        _entries.Add(entry);
        Work();
        return null;
    }

    ReadingEntry Entry(string kind, string from, string to, string value, string instrument)
    {
        var plusMinus = instrument.TrimStart().StartsWith('±') ? instrument.Trim() : "";
        return new(_tray.NewId(), Sample.Id, kind.Trim(), from.Trim(), to.Trim(), value.Trim(), plusMinus,
            plusMinus.Length > 0 ? "" : instrument.Trim(), "", _clock.GetUtcNow(), _device);
    }

    /// <returns>Why the reading still stands; null when it is taken back.</returns>
    public async Task<string?> Withdraw(ReadingEntry reading, string reason)
    {
        if (_tray.Refusal(reading.Id) is not null)
        {
            _entries.RemoveAll(e => e.Id == reading.Id);
            await _tray.Drop(reading.Id);
        }
        else
        {
            var withdrawal = new Withdrawal(_tray.NewId(), reading.Id, reason, _clock.GetUtcNow(), _device);
            if (await _tray.Append(withdrawal) is { } why) return why;
            _withdrawals.Add(withdrawal);
        }
        Work();
        return null;
    }

    /// <summary>Writes a withdrawn reading down once more, as a new entry.</summary>
    public Task<string?> PutBack(ReadingEntry withdrawn) => Append(withdrawn with { Id = _tray.NewId(), TakenAt = _clock.GetUtcNow() }, _ => null);

    public void Place(ImmutableArray<Feature> features)
    {
        Sketch.Change(Features.AddRange(features));
        Work();
    }

    public void Move(Feature feature)
    {
        Sketch.Change([.. Features.Select(f => f.Id == feature.Id ? feature : f)]);
        if (Plan is null) Work();
    }

    /// <summary>Says what has become of a feature: the plan is adjusted anew.</summary>
    public void Mark(Feature feature)
    {
        Sketch.Change([.. Features.Select(f => f.Id == feature.Id ? feature : f)]);
        Work();
    }

    public void TakeTheirs()
    {
        Sketch.TakeTheirs();
        Work();
    }

    /// <returns>Why the feature must stay; null when it is gone.</returns>
    public string? Remove(string id)
    {
        var naming = Lines.Count(l => l.Entry.From == id || l.Entry.To == id);
        if (naming > 0) return $"{id} is named by {naming} reading{(naming == 1 ? "" : "s")}; withdraw {(naming == 1 ? "that" : "those")} first.";
        if (Features.FirstOrDefault(f => f.From == id || f.To == id) is { } edge) return $"{edge.Id} ends at {id}; remove {edge.Id} first.";
        Sketch.Change([.. Features.Where(f => f.Id != id)]);
        Work();
        return null;
    }

    public void Want(double plusMinus)
    {
        Wanted = plusMinus;
        Advise();
    }

    /// <summary>Reads every entry anew and adjusts the plan.</summary>
    public void Work()
    {
        var standing = new ReadingHistory(_entries, _withdrawals).Standing.ToLookup(StoredSizes.IsOne);
        _sizes = [.. standing[true].Select(e => new ReadEntry(e, null, StoredSizes.Check(e), null))];
        Outcome = Outcome.Of(Sample, Sketch.Row, [.. standing[false]], Owned, _clock);
        Told();
        _ = Follow();
    }

    /// <summary>After the plan has been shown: what to read next, and whether another shape fits as well.</summary>
    async Task Follow()
    {
        var outcome = Outcome;
        await Task.Delay(1);
        if (outcome != Outcome) return;
        Advise();
        if (outcome is not { Plan.Convergence.Converged: true, Sample: { } sample } || Searching) return;
        Searching = true;
        Told();
        try
        {
            var others = await _desk.OtherShapes(sample, (_stop = new()).Token);
            if (outcome == Outcome) Outcome = outcome with { Plan = others.Into(outcome.Plan) };
        }
        catch (OperationCanceledException)
        {
            outcome = Outcome;
        }
        Searching = false;
        // Readings written meanwhile have made another plan: look at that one.
        if (outcome.Read != Outcome.Read) await Follow();
        else Advise();
    }

    /// <summary>Ends the search for other shapes.</summary>
    public void Stop() => _stop?.Cancel();

    void Advise()
    {
        Advice = Plan is { Convergence.Converged: true } plan ? Next.Advise(plan.Believed, Wanted / 2) : null;
        Told();
    }

    void Told()
    {
        Lines = [.. Outcome.Read.Select(LineOf)];
        Sizes = [.. _sizes.Select(LineOf)];
        Changed?.Invoke();
    }

    Line LineOf(ReadEntry r) => new(r.Reading?.Index + 1, r.Entry, StandingOf(r.Entry.Id), WhyNot(r), r.Reading, r.Result);

    string? WhyNot(ReadEntry r) => _tray.Refusal(r.Entry.Id) ?? r.Why;

    Standing StandingOf(Guid id) =>
        _tray.Refusal(id) is not null ? Standing.Refused : _tray.IsWaiting(id) ? Standing.Waiting : Standing.Kept;

    /// <summary>What waits here and the host does not have yet, refused ones too.</summary>
    void Take()
    {
        var (read, gone) = (_entries.Select(e => e.Id).ToHashSet(), _withdrawals.Select(w => w.Id).ToHashSet());
        _entries.AddRange(_tray.Waiting<ReadingEntry>().Where(e => e.SampleId == Sample.Id && !read.Contains(e.Id)));
        _withdrawals.AddRange(_tray.Waiting<Withdrawal>().Where(w => !gone.Contains(w.Id)));
    }

    public void Dispose()
    {
        Stop();
        _tray.Changed -= Told;
        Sketch.Decision.Changed -= Told;
        Folded.Changed -= Told;
    }
}
