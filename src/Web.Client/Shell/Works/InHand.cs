using WitnessMark.Maths;

namespace WitnessMark.Web.Client.Shell.Works;

public enum WorkState
{
    /// <summary>Others are before it.</summary>
    Waiting,
    Running,
    Done,
    Stopped,
    Refused,
}

/// <summary>One long work as the strip shows it.</summary>
public abstract class InHand(string key, string name, string where, string of)
{
    readonly CancellationTokenSource _stop = new();

    public string Key => key;

    public string Name => name;

    /// <summary>All that was asked; empty where nobody compares.</summary>
    public string Of => of;

    /// <summary>The page on which its result is looked at.</summary>
    public string Where => where;

    public WorkState State { get; protected set; }

    /// <summary>Done so far, 0 to 1; null while that is not known.</summary>
    public double? Share { get; protected set; }

    /// <summary>Time still wanted at the pace so far; null while that is not known.</summary>
    public abstract TimeSpan? Left { get; }

    /// <summary>Why it was refused.</summary>
    public string? Why { get; protected set; }

    /// <summary>Somebody has looked at what came of it: the strip need not offer it any more.</summary>
    public bool Seen { get; private set; }

    public bool Ended => State is WorkState.Done or WorkState.Stopped or WorkState.Refused;

    public event Action? Changed;

    protected CancellationToken Stopping => _stop.Token;

    public void Stop()
    {
        if (Ended) return;
        State = WorkState.Stopped;
        _stop.Cancel();
        Tell();
    }

    public void Look()
    {
        if (Seen || !Ended) return;
        Seen = true;
        Tell();
    }

    protected void Tell() => Changed?.Invoke();
}

/// <summary>A long work and what comes of it.</summary>
public sealed class InHand<T>(string key, string name, string where, string of, TimeProvider clock) : InHand(key, name, where, of)
{
    readonly TaskCompletionSource _over = new();
    long _began;

    /// <summary>What came of it; only when <see cref="WorkState.Done"/>.</summary>
    public T? Result { get; private set; }

    /// <summary>Ends with the work, however it ends; never throws.</summary>
    public Task Over => _over.Task;

    public override TimeSpan? Left => State == WorkState.Running && Share is { } share ? Pace.Left(clock.GetElapsedTime(_began), share) : null;

    internal async Task Run(Func<Action<double>, CancellationToken, Task<T>> run, SemaphoreSlim? turn)
    {
        var mine = false;
        try
        {
            if (turn is not null)
            {
                await turn.WaitAsync(Stopping);
                mine = true;
            }
            // The turn may have come in the moment in which it was stopped.
            Stopping.ThrowIfCancellationRequested();
            (State, _began) = (WorkState.Running, clock.GetTimestamp());
            Tell();
            var result = await run(Heard, Stopping);
            if (!Ended) (Result, Share, State) = (result, 1, WorkState.Done);
        }
        catch (OperationCanceledException)
        {
            State = WorkState.Stopped;
        }
        catch (RefusedException e)
        {
            (State, Why) = (WorkState.Refused, e.Message);
        }
        catch (Exception e) when (!Ended)
        {
            // A fault ends this work in words; the page that began it may be gone and could tell nobody.
            (State, Why) = (WorkState.Refused, $"{Name} met a fault and was given up: {e.Message}");
        }
        finally
        {
            if (mine) turn!.Release();
            _over.SetResult();
            Tell();
        }
    }

    void Heard(double share)
    {
        if (Ended) return;
        Share = Math.Clamp(share, 0, 1);
        Tell();
    }
}
