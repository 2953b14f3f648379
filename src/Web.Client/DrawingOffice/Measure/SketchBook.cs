using System.Collections.Immutable;
using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Shell;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.DrawingOffice.Measure;

/// <summary>
/// The sketch of one sample. It is a decision: saved under the version it was built on, kept in the browser until the host has it,
/// and asked about when somebody else saved first.
/// </summary>
public sealed class SketchBook(Server server, PageScript page, TimeProvider clock)
{
    /// <summary>Quiet time before a change is sent, and between tries, ms.</summary>
    const int Pause = 400, Patience = 3000;

    Guid _sample;
    int _version;
    bool _sending;

    public ImmutableArray<Feature> Features { get; private set; } = [];

    public SampleSketch Row => Written(Features);

    public bool Waiting { get; private set; }

    /// <summary>What somebody else saved first; null when there is no clash.</summary>
    public Versioned<SampleSketch>? Clash { get; private set; }

    /// <summary>Why the host will not have the sketch.</summary>
    public string? Refusal { get; private set; }

    public event Action? Changed;

    string Key => $"wm.sketch.{_sample:N}";

    public void Open(Versioned<SampleSketch> standing)
    {
        (_sample, _version) = (standing.Row.Id, standing.Version);
        Features = Read(standing.Row);
        if (KeptHere() is not { } kept) return;
        Features = Read(kept.Row);
        _version = kept.BasedOn;
        Waiting = true;
        _ = Send();
    }

    public void Change(ImmutableArray<Feature> features)
    {
        Features = features;
        Waiting = true;
        Refusal = null;
        Keep();
        Changed?.Invoke();
        _ = Send();
    }

    public void KeepMine()
    {
        if (Clash is not { } other) return;
        _version = other.Version;
        Clash = null;
        Change(Features);
    }

    public void TakeTheirs()
    {
        if (Clash is not { } other) return;
        (Clash, Waiting, _version, Features) = (null, false, other.Version, Read(other.Row));
        page.Forget(Key);
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
                await Task.Delay(TimeSpan.FromMilliseconds(wait), clock);
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
        var sent = Features;
        var reply = await server.Save(Written(sent), _version);
        if (reply.Away) return false;
        Refusal = reply.Refusal;
        if (reply.Refusal is not null) return true;
        if (reply.Value.Clash)
        {
            Clash = reply.Value.Standing;
            return true;
        }
        _version = reply.Value.Standing.Version;
        Waiting = sent != Features;
        if (Waiting) Keep();
        else page.Forget(Key);
        return true;
    }

    void Keep() => page.Keep(Key, JsonSerializer.Serialize(new Saving<SampleSketch>(Written(Features), _version), WireJson.Default.SavingSampleSketch));

    Saving<SampleSketch>? KeptHere()
    {
        try
        {
            return page.Kept(Key) is { } text ? JsonSerializer.Deserialize(text, WireJson.Default.SavingSampleSketch) : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    SampleSketch Written(ImmutableArray<Feature> features) => new(_sample, [.. features.Select(Spelling.Written)]);

    static ImmutableArray<Feature> Read(SampleSketch sketch) => [.. sketch.Features.Select(Spelling.Read).OfType<Feature>()];
}
