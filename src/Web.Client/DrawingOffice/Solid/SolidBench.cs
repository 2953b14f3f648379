using System.Collections.Immutable;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.MeasureSolid.Rows;
using WitnessMark.Maths;
using WitnessMark.Stores.Shapes;
using WitnessMark.Web.Client.BackRoom;
using WitnessMark.Web.Client.DrawingOffice.Shapes;
using WitnessMark.Web.Client.Outbox;

namespace WitnessMark.Web.Client.DrawingOffice.Solid;

/// <summary>A sample's sheet in space on the bench: its text as typed, and the shape that its readings make.</summary>
/// <param name="typed">Kept as one decision; it bears the sample's id, so two phones never begin two.</param>
public sealed class SolidBench(Decision<TypedShape> typed, Desk desk, TimeProvider clock) : IDisposable
{
    // Of rest after a letter typed, ms.
    const int Rest = 350;

    readonly TextTrail _trail = new(clock);
    CancellationTokenSource? _stop;
    object? _asked;

    public Decision<TypedShape> Typed => typed;

    public string Text => typed.Row.Text;

    /// <summary>The rows that can be told apart; those from before while the text is being typed.</summary>
    public TypedSolid? Rows { get; private set; }

    public SolidResult? Result { get; private set; }

    /// <summary>Why there is no newer shape, in one sentence.</summary>
    public string? Why { get; private set; }

    public ImmutableArray<string> Cautions { get; private set; } = [];

    public bool Searching { get; private set; }

    public double Milliseconds { get; private set; }

    /// <summary>± that every dimension is to have (19 of 20), mm.</summary>
    public double Wanted { get; private set; } = 0.1;

    public bool CanUndo => _trail.CanUndo;

    public bool CanRedo => _trail.CanRedo;

    public event Action? Changed;

    public Task Undo() => Set(_trail.Undo(Text), 0);

    public Task Redo() => Set(_trail.Redo(Text), 0);

    public Task Want(double plusMinus)
    {
        Wanted = plusMinus;
        return Work(0);
    }

    /// <summary>As the person types in the whole text: kept at once, worked out when the hand rests.</summary>
    public Task Write(string text)
    {
        if (text == Text) return Task.CompletedTask;
        _trail.Left(Text);
        return Set(text, Rest);
    }

    /// <summary>A row written down: taken only when the whole sheet can then be read.</summary>
    /// <returns>Why not; null when it was taken.</returns>
    public async Task<string?> Add(string with)
    {
        if (SolidFile.Read(with).Refusal is { } refusal) return refusal.Sentence;
        _trail.Left(Text);
        await Set(with, 0);
        return null;
    }

    /// <returns>Why the row must stay; null when it is gone.</returns>
    public Task<string?> TakeOut(int line) => Add(SolidText.Without(Text, line));

    Task Set(string text, int rest)
    {
        typed.Change(typed.Row with { Text = text });
        return Work(rest);
    }

    /// <summary>The shape first; then, away from the page, whether another fits as well.</summary>
    public async Task Work(int rest)
    {
        var asked = _asked = new();
        Stop();
        if (rest > 0) await Task.Delay(rest);
        if (asked != _asked) return;
        var ask = new SolidAsked(Text, Wanted);
        try
        {
            if (TypedSolid.Read(Text) is { Ok: true } rows) Rows = rows.Value;
            if (Rows is { Features.Length: 0 })
            {
                (Result, Why, Cautions) = (null, null, []);
                Changed?.Invoke();
                return;
            }
            var began = clock.GetTimestamp();
            (Result, Why) = (ask.Run(), null);
            (Cautions, Milliseconds) = (Result.Cautions, clock.GetElapsedTime(began).TotalMilliseconds);
        }
        catch (RefusedException e)
        {
            Why = e.Message;
        }
        Changed?.Invoke();
        if (Why is null && Result is { Plan: { Convergence.Converged: true, Redundancy: > 0 } }) await Search(ask, asked);
    }

    async Task Search(SolidAsked ask, object asked)
    {
        var stop = _stop = new();
        Searching = true;
        Changed?.Invoke();
        try
        {
            var found = await desk.SolidCautions(ask, stop.Token);
            if (asked == _asked) Cautions = found;
        }
        catch (Exception e) when (e is OperationCanceledException or RefusedException)
        {
            // The shape stands; only the other shapes were not looked for.
            if (asked == _asked) Cautions = [.. Cautions, "Whether another shape fits as well was not looked for to the end."];
        }
        if (_stop == stop) (Searching, _stop) = (false, null);
        Changed?.Invoke();
    }

    public void Stop() => _stop?.Cancel();

    public void Dispose()
    {
        _asked = null;
        Stop();
    }
}
