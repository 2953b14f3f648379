using System.Collections.Concurrent;
using WitnessMark.Maths;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Pictures;

/// <summary>Files of pictures that were asked for: how far each is, and a way to stop it.</summary>
sealed class PictureExports(TimeProvider clock)
{
    /// <summary>Held for a page that still looks at it.</summary>
    static readonly TimeSpan Held = TimeSpan.FromHours(1);

    const int Most = 200;

    readonly ConcurrentDictionary<Guid, Export> _exports = new();

    public Export Ask(Guid vehicle, ExportAsked asked)
    {
        foreach (var old in _exports.Values.Where(e => clock.GetUtcNow() - e.At > Held)) _exports.TryRemove(old.Asked.Id, out _);
        if (_exports.Count >= Most) throw new RefusedException(Refusal.Of("export", $"{Most} at once", "wait until one of them is done"));
        if (asked.Id == Guid.Empty) throw new RefusedException(Refusal.Of("id", null, "it is made by who asks"));
        return _exports.GetOrAdd(asked.Id, _ => new(vehicle, asked, clock.GetUtcNow()));
    }

    public Export? Find(Guid vehicle, Guid id) => _exports.TryGetValue(id, out var export) && export.Vehicle == vehicle ? export : null;
}

/// <summary>One of them.</summary>
sealed class Export(Guid vehicle, ExportAsked asked, DateTimeOffset at)
{
    readonly CancellationTokenSource _stop = new();
    volatile string _state = "waiting";
    volatile int _done, _total;

    public Guid Vehicle => vehicle;

    public ExportAsked Asked => asked;

    public DateTimeOffset At => at;

    public ExportStanding Standing => new(asked.Id, _state, _done, _total);

    public CancellationToken Stopped => _stop.Token;

    public void Begin(int total) => (_total, _done, _state) = (total, 0, "running");

    public void Told(int done) => _done = done;

    public void End(bool whole) => _state = whole ? "done" : "stopped";

    public void Stop()
    {
        _stop.Cancel();
        if (_state == "waiting") _state = "stopped";
    }
}
