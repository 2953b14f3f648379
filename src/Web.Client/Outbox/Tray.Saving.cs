using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>Keeps decisions under the version they were built on (0: new); answers why not, or null when they are kept on this device.</summary>
public sealed partial class Tray
{
    public Task<string?> Save<T>(T row, int basedOn = 0) where T : class, IDecision =>
        Save(row, Kinds.Desk(typeof(T).Name, row.VehicleId, row.Id), row.Wrong(), basedOn);

    public Task<string?> Save(Vehicle row, int basedOn = 0) => Save(row, Addresses.Vehicle(row.Id), Check.Of(row), basedOn);

    public Task<string?> Save(VehicleSystem row, int basedOn = 0) => Save(row, Addresses.System(row.Id), Check.Of(row), basedOn);

    public Task<string?> Save(Assembly row, int basedOn = 0) => Save(row, Addresses.Assembly(row.Id), Check.Of(row), basedOn);

    public Task<string?> Save(Part row, int basedOn = 0) => Save(row, Addresses.Part(row.Id), Check.Of(row), basedOn);

    public Task<string?> Save(PartSample row, int basedOn = 0) => Save(row, Addresses.Sample(row.Id), Check.Of(row), basedOn);

    public Task<string?> Save(OwnedInstrument row, int basedOn = 0) => Save(row, Addresses.Instrument(row.Id), Check.Of(row), basedOn);

    public Task<string?> Save(Job row, int basedOn = 0) => Save(row, Addresses.Job(row.Id), row.Wrong, basedOn);

    public Task<string?> Save(Milestone row, int basedOn = 0) => Save(row, Addresses.Milestone(row.Id), row.Wrong, basedOn);

    public Task<string?> Save(Means row, int basedOn = 0) => Save(row, Addresses.Means(row.Id), row.Wrong, basedOn);

    public Task<string?> Save(StandingOrder row, int basedOn = 0) => Save(row, Addresses.Order(row.Id), row.Wrong, basedOn);

    public Task<string?> Save(WorkCalendar row, int basedOn = 0) => Save(row, Addresses.Calendar, row.Wrong, basedOn);

    public Task<string?> Save(Shop row, int basedOn = 0) => Save(row, Addresses.Shop, row.Wrong, basedOn);

    /// <summary>The rows that a set of changes adds or alters, all kept here or none; each is then sent under its own version.</summary>
    public async Task<string?> Save(TreeChanges changes)
    {
        List<(string Kind, string Address, string Text, Refusal? Wrong, int BasedOn)> rows =
        [
            .. Rows(changes.Systems, s => Addresses.System(s.Id), Check.Of), .. Rows(changes.Assemblies, a => Addresses.Assembly(a.Id), Check.Of),
            .. Rows(changes.Parts, p => Addresses.Part(p.Id), Check.Of),
        ];
        if (rows.Select(r => r.Wrong).FirstOrDefault(w => w is not null) is { } wrong) return wrong.Sentence;
        try
        {
            await Change(lying => new Shift { Decisions = [.. rows.Select(r => Waits(lying, r.Kind, r.Address, r.Text, r.BasedOn, quiet: false))] });
        }
        catch (NotKeptException e)
        {
            return e.Message;
        }
        Told();
        return null;
    }

    /// <summary>Whether a decision with this address waits here.</summary>
    public bool IsWaiting(string address) => Lying.Decisions.ContainsKey(address);

    /// <summary>A row that was made here and that the host does not have yet; null when it has it, or nothing waits.</summary>
    internal T? Begun<T>(string address) where T : class =>
        Lying.Decisions.GetValueOrDefault(address) is { BasedOn: 0 } d && d.Kind == typeof(T).Name ? Spelling.Read<T>(d.Text) : null;

    async Task<string?> Save<T>(T row, string address, Refusal? wrong, int basedOn) where T : class
    {
        if (wrong is not null) return wrong.Sentence;
        if (await Decide(typeof(T).Name, address, Spelling.Text(row), basedOn, quiet: false) is { } why) return why;
        var said = await Hear(address);
        if (said.Fate == Fate.Clash) return "It was changed elsewhere meanwhile: yours is kept here, and nothing was overwritten. Choose between the two under \"Waiting\".";
        if (said.Fate != Fate.Refused) return null;
        await Drop(address);
        return said.Words;
    }

    /// <summary>Keeps a decision that is sent when it has been quiet for a moment; what becomes of it is asked with <see cref="Settled"/>.</summary>
    /// <returns>Why it is not kept.</returns>
    internal async Task<string?> Decide(string kind, string address, string text, int basedOn, bool quiet)
    {
        _touched[address] = quiet ? clock.GetUtcNow() : default;
        try
        {
            await Change(lying => new Shift { Decisions = [Waits(lying, kind, address, text, basedOn, quiet)] });
        }
        catch (NotKeptException e)
        {
            var said = await carrier.Carry(HttpMethod.Put, address, Batches.Body(text, BuiltOn(address, basedOn)));
            Tell(address, said);
            return said.Fate switch { Fate.Done => null, Fate.Refused => said.Words, Fate.Clash => "It was changed elsewhere meanwhile; look at what stands now and decide again.", _ => e.Message };
        }
        Told();
        return null;
    }

    /// <summary>The decision as it waits from now on.</summary>
    Unsaved Waits(Lying lying, string kind, string address, string text, int basedOn, bool quiet)
    {
        var (before, standsOn) = (lying.Decisions.GetValueOrDefault(address), BuiltOn(address, basedOn));
        return new(kind, address, text, before is null ? standsOn : Math.Min(before.BasedOn, standsOn), clock.GetUtcNow())
        {
            Tried = before?.Tried ?? [],
            Theirs = quiet ? before?.Theirs : null,
            TheirVersion = quiet ? before?.TheirVersion ?? 0 : 0,
        };
    }

    /// <summary>What this page built on may have been sent meanwhile: its next change stands on that, and is no clash.</summary>
    int BuiltOn(string address, int basedOn) =>
        _saved.TryGetValue(address, out var sent) && basedOn >= sent.BasedOn && basedOn < sent.Version ? sent.Version : basedOn;

    static IEnumerable<(string, string, string, Refusal?, int)> Rows<T>(IEnumerable<RowChange<T>> changes, Func<T, string> address, Func<T, Refusal?> wrong) where T : class =>
        changes.Where(c => c.After is not null).Select(c => (typeof(T).Name, address(c.After!), Spelling.Text(c.After!), wrong(c.After!), c.BasedOn));
}
