using System.Collections.Concurrent;

namespace WitnessMark.Web.Tests.Outbox;

/// <summary>Runs what a page runs as a browser does: on one thread, with waits that are over at once.</summary>
static class OnePage
{
    public static void Run(Func<Task> work)
    {
        var before = SynchronizationContext.Current;
        var queue = new Queue();
        SynchronizationContext.SetSynchronizationContext(queue);
        try
        {
            var done = work();
            _ = done.ContinueWith(_ => queue.End(), TaskScheduler.Default);
            queue.Pump();
            done.GetAwaiter().GetResult();
        }
        finally
        {
            SynchronizationContext.SetSynchronizationContext(before);
        }
    }

    sealed class Queue : SynchronizationContext
    {
        readonly BlockingCollection<(SendOrPostCallback, object?)> _calls = [];

        public override void Post(SendOrPostCallback d, object? state)
        {
            if (!_calls.IsAddingCompleted) _calls.Add((d, state));
        }

        public void End() => _calls.CompleteAdding();

        public void Pump()
        {
            foreach (var (call, state) in _calls.GetConsumingEnumerable()) call(state);
        }
    }
}

/// <summary>A clock whose every wait is over at once and has taken its time all the same.</summary>
sealed class HastyClock : TimeProvider
{
    long _ticks = new DateTimeOffset(2026, 11, 26, 9, 0, 0, TimeSpan.Zero).Ticks;

    public override DateTimeOffset GetUtcNow() => new(Interlocked.Increment(ref _ticks), TimeSpan.Zero);

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        if (dueTime >= TimeSpan.Zero)
        {
            Interlocked.Add(ref _ticks, dueTime.Ticks);
            ThreadPool.QueueUserWorkItem(_ => callback(state));
        }
        return new Done();
    }

    sealed class Done : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose() { }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
