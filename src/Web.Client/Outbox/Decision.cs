using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Shell;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>
/// A decision open in the page: saved under the version it was built on, kept in the browser until the host has it, and asked about
/// when somebody else saved first.
/// </summary>
public sealed class Decision<T> where T : class
{
    /// <summary>Quiet time before a change is sent, and between tries, ms.</summary>
    const int Pause = 400, Patience = 3000;

    readonly string _key;
    readonly JsonTypeInfo<Saving<T>> _shape;
    readonly Func<T, int, Task<Reply<Saved<T>>>> _save;
    readonly PageScript _page;
    readonly TimeProvider _clock;
    int _version;
    bool _sending;

    /// <param name="key">What it is kept under in the browser while it waits.</param>
    public Decision(string key, Versioned<T> standing, JsonTypeInfo<Saving<T>> shape, Func<T, int, Task<Reply<Saved<T>>>> save, PageScript page, TimeProvider clock)
    {
        (_key, _shape, _save, _page, _clock) = (key, shape, save, page, clock);
        (Row, _version) = (standing.Row, standing.Version);
        if (KeptHere() is not { } kept) return;
        (Row, _version, Waiting) = (kept.Row, kept.BasedOn, true);
        _ = Send();
    }

    public T Row { get; private set; }

    /// <summary>The host does not have it yet.</summary>
    public bool Waiting { get; private set; }

    /// <summary>What somebody else saved first; null when there is no clash.</summary>
    public Versioned<T>? Clash { get; private set; }

    /// <summary>Why the host will not have it.</summary>
    public string? Refusal { get; private set; }

    public event Action? Changed;

    public void Change(T row)
    {
        (Row, Waiting, Refusal) = (row, true, null);
        Keep();
        Changed?.Invoke();
        _ = Send();
    }

    public void KeepMine()
    {
        if (Clash is not { } other) return;
        (_version, Clash) = (other.Version, null);
        Change(Row);
    }

    public void TakeTheirs()
    {
        if (Clash is not { } other) return;
        (Clash, Waiting, _version, Row) = (null, false, other.Version, other.Row);
        _page.Forget(_key);
        Changed?.Invoke();
    }

    async Task Send()
    {
        if (_sending) return;
        _sending = true;
        try
        {
            var wait = Pause;
            while (Waiting && Clash is null && Refusal is null)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(wait), _clock);
                wait = await SendOnce() ? Pause : Patience;
                Changed?.Invoke();
            }
        }
        finally
        {
            _sending = false;
        }
    }

    /// <returns>False when the host was away.</returns>
    async Task<bool> SendOnce()
    {
        var sent = Row;
        var reply = await _save(sent, _version);
        if (reply.Away) return false;
        if (reply.Refusal is not null)
        {
            // What was changed meanwhile has not been refused.
            if (ReferenceEquals(sent, Row)) Refusal = reply.Refusal;
            return true;
        }
        if (reply.Value.Clash)
        {
            Clash = reply.Value.Standing;
            return true;
        }
        _version = reply.Value.Standing.Version;
        Waiting = !ReferenceEquals(sent, Row);
        if (Waiting) Keep();
        else _page.Forget(_key);
        return true;
    }

    void Keep() => _page.Keep(_key, JsonSerializer.Serialize(new(Row, _version), _shape));

    Saving<T>? KeptHere()
    {
        try
        {
            return _page.Kept(_key) is { } text ? JsonSerializer.Deserialize(text, _shape) : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>Opens the decisions about a sample.</summary>
public sealed class Decisions(Server server, PageScript page, TimeProvider clock)
{
    public Decision<SampleSketch> Sketch(Versioned<SampleSketch> standing) =>
        new($"wm.sketch.{standing.Row.Id:N}", standing, WireJson.Default.SavingSampleSketch, server.Save, page, clock);

    public Decision<FoldedPart> Folded(Versioned<FoldedPart> standing) =>
        new($"wm.folded.{standing.Row.Id:N}", standing, WireJson.Default.SavingFoldedPart, server.Save, page, clock);
}
