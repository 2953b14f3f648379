using System.Collections.Immutable;
using Microsoft.JSInterop;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>What a person does with what waits, and what the browser tells.</summary>
public sealed partial class Tray
{
    /// <summary>Acknowledged entries are remembered so long, or so many.</summary>
    static readonly TimeSpan Remembered = TimeSpan.FromDays(14);

    const int MostRemembered = 2000;

    /// <summary>Lets go of something that waits: an entry by its id, a decision by its address, a picture by its id.</summary>
    public async Task Drop(string key)
    {
        await Change(_ => new Shift { Drops = [(Shift.EntryStore, key), (Shift.DecisionStore, key), (Shift.PictureStore, key)] });
        Changed?.Invoke();
    }

    public Task Drop(Guid id) => Drop(id.ToString("N"));

    /// <summary>Sends a refused entry once more, as it now reads.</summary>
    public async Task Again(Unsent entry, string text)
    {
        await Change(_ => new Shift { Entries = [entry with { Text = text, Refusal = null }] });
        Told();
    }

    public async Task Again(Unsaved decision, string text)
    {
        await Change(_ => new Shift { Decisions = [decision with { Text = text, Refusal = null, Tried = [] }] });
        Told();
    }

    /// <summary>After a clash: this device's row counts, on top of the other.</summary>
    public async Task KeepMine(string address)
    {
        await Change(l => l.Decisions.GetValueOrDefault(address) is { Theirs: not null } d
            ? new Shift { Decisions = [d with { BasedOn = d.TheirVersion, Theirs = null, TheirVersion = 0, Tried = [] }] } : new());
        Told();
    }

    /// <summary>After a clash: the other row counts, and this device's is let go.</summary>
    public async Task TakeTheirs(string address)
    {
        await Change(l => l.Decisions.GetValueOrDefault(address) is { Theirs: { } theirs } d
            ? new Shift { Drops = [(Shift.DecisionStore, address)], Sent = [new(d.Kind, d.Address, theirs, d.TheirVersion, clock.GetUtcNow(), d.Address)] } : new());
        Changed?.Invoke();
    }

    /// <summary>What waits, as a file.</summary>
    public async Task<string> HandOver(string device)
    {
        var pictures = new List<PictureBytes>();
        foreach (var p in Lying.Pictures.Values) pictures.Add(new(p.Id, p.Type, await shelf.Picture(p.Id)));
        return TrayFile.Write(device, Lying, pictures);
    }

    /// <summary>Takes another device's file into this tray; what the host has already is recorded once all the same.</summary>
    /// <returns>How many entries, decisions and pictures there were.</returns>
    /// <exception cref="Maths.RefusedException">It is no such file.</exception>
    /// <exception cref="NotKeptException">It could not be kept here.</exception>
    public async Task<int> TakeIn(string text)
    {
        var file = TrayFile.Read(text);
        foreach (var p in file.Pictures)
            if (await Keep(p.Bytes) is { Ok: false } not) throw new Maths.RefusedException(not.Refusal!);
        await Change(lying => new Shift
        {
            Entries = [.. file.Entries.Select(e => e with { Refusal = null })],
            // A decision that waits here as well is left: the other file's would overwrite it unseen.
            Decisions = [.. file.Decisions.Where(d => !lying.Decisions.ContainsKey(d.Address)).Select(d => d with { Refusal = null, Theirs = null, TheirVersion = 0 })],
        });
        Told();
        return file.Entries.Count + file.Decisions.Count + file.Pictures.Count;
    }

    [JSInvokable]
    public void Woken() => Wake();

    /// <summary>Another page of this browser has put something here or sent it.</summary>
    [JSInvokable]
    public async Task ChangedElsewhere()
    {
        try
        {
            await Reread();
        }
        catch (NotKeptException)
        {
            return;
        }
        Told();
    }

    async Task Trim()
    {
        var old = clock.GetUtcNow() - Remembered;
        var gone = Lying.Sent.Values.OrderByDescending(s => s.At).Where((s, i) => i >= MostRemembered || s.At < old).Select(s => (Shift.SentStore, s.Key)).ToImmutableArray();
        if (gone.Length > 0) await Change(_ => new Shift { Drops = gone });
    }
}
