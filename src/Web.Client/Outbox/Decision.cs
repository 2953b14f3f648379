using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>
/// A decision open in the page: saved under the version it was built on, kept in the out-tray until the host has it, and asked about when
/// somebody else saved first.
/// </summary>
public sealed class Decision<T> where T : class
{
    readonly Tray _tray;
    readonly string _address;
    int _version;
    bool _keeping, _again, _following;

    /// <param name="address">Where it is saved; it waits under the same name.</param>
    public Decision(Tray tray, string address, Versioned<T> standing)
    {
        (_tray, _address) = (tray, address);
        (Row, _version) = (standing.Row, standing.Version);
        if (tray.Lying.Decisions.GetValueOrDefault(address) is not { } kept || Spelling.Read<T>(kept.Text) is not { } row) return;
        (Row, _version, Waiting, Refusal) = (row, kept.BasedOn, true, kept.Refusal);
        if (kept.Theirs is { } theirs && Spelling.Read<T>(theirs) is { } other) Clash = new(other, kept.TheirVersion);
        _ = Follow();
    }

    public T Row { get; private set; }

    /// <summary>The host does not have it yet.</summary>
    public bool Waiting { get; private set; }

    /// <summary>What somebody else saved first; null when there is no clash.</summary>
    public Versioned<T>? Clash { get; private set; }

    /// <summary>Why the host will not have it, or why it could not be kept here.</summary>
    public string? Refusal { get; private set; }

    public event Action? Changed;

    public void Change(T row)
    {
        (Row, Waiting, Refusal) = (row, true, null);
        Changed?.Invoke();
        _ = Keep();
    }

    public void KeepMine()
    {
        if (Clash is not { } other) return;
        (_version, Clash) = (other.Version, null);
        _ = Mine();
    }

    public void TakeTheirs()
    {
        if (Clash is not { } other) return;
        (Clash, Waiting, _version, Row) = (null, false, other.Version, other.Row);
        _ = _tray.TakeTheirs(_address);
        Changed?.Invoke();
    }

    async Task Mine()
    {
        await _tray.KeepMine(_address);
        await Follow();
    }

    /// <summary>The newest is written as soon as the one before is on the disk.</summary>
    async Task Keep()
    {
        (_again, var busy) = (true, _keeping);
        if (busy) return;
        _keeping = true;
        try
        {
            while (_again)
            {
                _again = false;
                var why = await _tray.Decide(typeof(T).Name, _address, Spelling.Text(Row), _version, quiet: true);
                if (why is not null && !_again) Refusal = why;
            }
        }
        finally
        {
            _keeping = false;
        }
        Waiting = Refusal is not null || IsKept;
        Changed?.Invoke();
        await Follow();
    }

    bool IsKept => _tray.Lying.Decisions.ContainsKey(_address);

    async Task Follow()
    {
        if (_following) return;
        _following = true;
        try
        {
            while (IsKept && Clash is null && Refusal is null)
            {
                var said = await _tray.Settled(_address);
                if (said.Fate == Fate.Clash && Spelling.Read<T>(said.Words!) is { } theirs) Clash = new(theirs, said.Version);
                // What was changed meanwhile has not been refused.
                else if (said.Fate == Fate.Refused) Refusal = _tray.Lying.Decisions.GetValueOrDefault(_address)?.Refusal;
                else if (said.Fate == Fate.Done) (_version, Waiting) = (said.Version, IsKept || _keeping);
                Changed?.Invoke();
            }
        }
        finally
        {
            _following = false;
        }
    }
}

/// <summary>Opens decisions.</summary>
public static class Decisions
{
    public static Decision<SampleSketch> Sketch(this Tray tray, Versioned<SampleSketch> standing) => new(tray, Kinds.Sketch(standing.Row.Id), standing);

    public static Decision<FoldedPart> Folded(this Tray tray, Versioned<FoldedPart> standing) => new(tray, Kinds.Folded(standing.Row.Id), standing);

    public static Decision<T> Decision<T>(this Tray tray, Versioned<T> standing) where T : class, IDecision =>
        new(tray, Kinds.Desk(typeof(T).Name, standing.Row.VehicleId, standing.Row.Id), standing);
}
