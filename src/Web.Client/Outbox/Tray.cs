using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>
/// The out-tray: every entry lies on this device's disk before it is shown, and is let go only when the host has acknowledged it. Ids are
/// made here, so an entry sent twice is recorded once. Decisions wait under the version they were built on and never overwrite.
/// </summary>
public sealed partial class Tray(IShelf shelf, ICarrier carrier, TimeProvider clock)
{
    /// <summary>How long a page that has just kept something waits to hear what the host says to it, while the host is not known to be away.</summary>
    static readonly TimeSpan Hearing = TimeSpan.FromSeconds(2), Uploading = TimeSpan.FromSeconds(20);

    readonly SemaphoreSlim _gate = new(1);

    /// <summary>What lies on the shelf, at hand without waiting.</summary>
    public Lying Lying { get; private set; } = Lying.Nothing;

    /// <summary>Why this browser keeps nothing; null when it does.</summary>
    public string? KeepsNothing { get; private set; }

    public event Action? Changed;

    /// <summary>The host has it now.</summary>
    public event Action<Guid>? Acknowledged;

    /// <summary>Time-ordered, so that the tray keeps its order under sorted keys.</summary>
    public Guid NewId() => Guid.CreateVersion7(clock.GetUtcNow());

    /// <summary>Finds what was left from the last time. Once, before the first page.</summary>
    public async Task Open()
    {
        try
        {
            Lying = await shelf.Read(withSent: true);
            await Trim();
        }
        catch (NotKeptException e)
        {
            KeepsNothing = e.Message;
        }
    }

    public IReadOnlyList<Unsent> Waiting() => [.. Lying.Entries.Values];

    /// <summary>Those of one kind that wait, in the order they were made.</summary>
    public IEnumerable<T> Waiting<T>() where T : class => Rows<T>(Lying.Entries.Values.Where(e => e.Kind == typeof(T).Name).Select(e => e.Text));

    public bool IsWaiting(Guid id) => Lying.Entries.ContainsKey(id.ToString("N"));

    /// <summary>Why the host will not have an entry; null when it was not refused.</summary>
    public string? Refusal(Guid id) => Lying.Entries.GetValueOrDefault(id.ToString("N"))?.Refusal;

    /// <summary>Keeps what was seen; answers why not, or null when it is kept on this device.</summary>
    public Task<string?> Append<T>(params ImmutableArray<T> facts) where T : class, IFact =>
        Append(facts, f => f.Wrong(), f => f.Id, f => Kinds.Desk(typeof(T).Name, f.VehicleId));

    public Task<string?> Append(Started row) => Append([row], r => HoursCheck.Of(r, clock.GetUtcNow()), r => r.Id, _ => Kinds.Starts);

    public Task<string?> Append(HoursEntry row) => Append([row], r => HoursCheck.Of(r, clock.GetUtcNow()), r => r.Id, _ => Kinds.Hours);

    public Task<string?> Append(HoursWithdrawal row) => Append([row], r => HoursCheck.Of(r, clock.GetUtcNow()), r => r.Id, _ => Kinds.HoursTakenBack);

    /// <summary>A reading is shown as soon as it is kept; what the host says to it is not waited for.</summary>
    public Task<string?> Append(ReadingEntry row) => Append([row], Check.Of, r => r.Id, r => Kinds.Readings(r.SampleId), hear: false);

    public Task<string?> Append(Withdrawal row) => Append([row], Check.Of, r => r.Id, _ => Kinds.Withdrawals, hear: false);

    /// <summary>Keeps a picture's bytes; they are sent before any entry that names them.</summary>
    /// <returns>Its id, or why it was not kept.</returns>
    public async Task<Parsed<string>> Keep(byte[] bytes)
    {
        var kind = PictureKind.Of(bytes);
        if (!kind.Ok) return kind.Refusal!;
        UnsentPicture picture;
        try
        {
            await _gate.WaitAsync();
            try
            {
                picture = await shelf.KeepPicture(bytes, kind.Value);
                Lying = Lying with { Pictures = Lying.Pictures.SetItem(picture.Id, picture with { At = clock.GetUtcNow() }) };
            }
            finally
            {
                _gate.Release();
            }
        }
        catch (NotKeptException e)
        {
            var said = await carrier.Carry("api/pictures", bytes);
            return said.Fate == Fate.Done ? PictureKind.Id(bytes) : new Refusal(said.Fate == Fate.Refused ? said.Words! : e.Message);
        }
        Told();
        // Until the host has it only this device can show it: a page would rather wait a moment.
        var heard = await Hear(picture.Id, Uploading);
        if (heard.Fate != Fate.Refused) return picture.Id;
        await Drop(picture.Id);
        return new Refusal(heard.Words!);
    }

    async Task<string?> Append<T>(ImmutableArray<T> rows, Func<T, Refusal?> wrong, Func<T, Guid> id, Func<T, string> address, bool hear = true)
    {
        if (rows.Select(wrong).FirstOrDefault(w => w is not null) is { } refused) return refused.Sentence;
        var now = clock.GetUtcNow();
        ImmutableArray<Unsent> entries = [.. rows.Select(r => new Unsent(id(r), typeof(T).Name, address(r), Spelling.Text(r), now))];
        if (entries.IsEmpty) return null;
        try
        {
            await Change(_ => new Shift { Entries = entries });
        }
        catch (NotKeptException e)
        {
            return await Straight(entries, e.Message);
        }
        Told();
        if (!hear) return null;
        var said = await Hear(entries[^1].Key);
        if (said.Fate != Fate.Refused) return null;
        foreach (var entry in entries) await Drop(entry.Key);
        return said.Words;
    }

    /// <summary>Where nothing can be kept, the host may still answer.</summary>
    async Task<string?> Straight(ImmutableArray<Unsent> entries, string notKept)
    {
        foreach (var batch in Batches.Of(entries))
        {
            var said = await carrier.Carry(HttpMethod.Post, batch[0].Address, Batches.Body(batch));
            if (said.Fate != Fate.Done) return said.Fate == Fate.Refused ? said.Words : notKept;
            foreach (var entry in batch) Acknowledged?.Invoke(entry.Id);
        }
        return null;
    }

    /// <summary>Changes shelf and mirror together, one change after the other.</summary>
    async Task Change(Func<Lying, Shift> change)
    {
        await _gate.WaitAsync();
        try
        {
            var shift = change(Lying);
            await shelf.Change(shift);
            Lying = Lying.After(shift);
        }
        finally
        {
            _gate.Release();
        }
    }

    /// <summary>
    /// The same after an answer of the host. A full disk must not stop the tray from emptying: then only what can go is let go, and the
    /// rest is known until the page is closed.
    /// </summary>
    async Task Settle(Func<Lying, Shift> change)
    {
        await _gate.WaitAsync();
        try
        {
            var shift = change(Lying);
            try
            {
                await shelf.Change(shift);
            }
            catch (NotKeptException) when (shift.Drops.Length > 0)
            {
                await shelf.Change(new Shift { Drops = shift.Drops });
            }
            catch (NotKeptException)
            {
                // Asked again after the next start: the host says the same.
            }
            Lying = Lying.After(shift);
        }
        finally
        {
            _gate.Release();
        }
    }

    void Told()
    {
        Changed?.Invoke();
        _ = Send();
    }

    static IEnumerable<T> Rows<T>(IEnumerable<string> texts) where T : class => texts.Select(Spelling.Read<T>).OfType<T>();
}
