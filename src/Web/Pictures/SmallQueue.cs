using System.Threading.Channels;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Pictures;

/// <summary>Makes the smaller copies in the background: at the start those that are missing, then each picture as it comes in.</summary>
sealed class SmallQueue(SmallShelf shelf, IPictureStore originals, TimeProvider clock, ILogger<SmallQueue> log) : BackgroundService
{
    readonly Channel<string> _waiting = Channel.CreateUnbounded<string>(new() { SingleReader = true });
    volatile TaskCompletionSource? _rest;
    int _queued, _made, _unreadable;
    TimeSpan _worked;

    public void Add(string id)
    {
        Interlocked.Increment(ref _queued);
        _waiting.Writer.TryWrite(id);
    }

    public PictureWork Standing()
    {
        var (queued, done) = (_queued, _made + _unreadable);
        return new(_made, queued - done, _unreadable, _rest is not null, done > 0 ? _worked.TotalSeconds / done * (queued - done) : null);
    }

    /// <summary>Nothing more is made until it is let go on; what is asked for on a page is made all the same.</summary>
    public void Pause() => Interlocked.CompareExchange(ref _rest, new(TaskCreationOptions.RunContinuationsAsynchronously), null);

    public void GoOn() => Interlocked.Exchange(ref _rest, null)?.SetResult();

    protected override async Task ExecuteAsync(CancellationToken stop)
    {
        await Task.Yield();
        try
        {
            foreach (var id in originals.All())
                if (!shelf.Has(id)) Add(id);
            await foreach (var id in _waiting.Reader.ReadAllAsync(stop))
            {
                if (_rest is { } rest) await rest.Task.WaitAsync(stop);
                await Make(id, stop);
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The house closes; what is not made is made at the next start.
        }
    }

    async Task Make(string id, CancellationToken stop)
    {
        var begun = clock.GetTimestamp();
        try
        {
            if (await shelf.Find(id, SmallSize.List, stop) is { Why: null }) _made++;
            else _unreadable++;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or OutOfMemoryException)
        {
            // One picture that cannot be read must not end the work on the others.
            _unreadable++;
            log.LogWarning("No smaller copy of picture {Id}: {Why}", id, e.Message);
        }
        _worked += clock.GetElapsedTime(begun);
    }
}
