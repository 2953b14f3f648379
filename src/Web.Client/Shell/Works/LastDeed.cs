namespace WitnessMark.Web.Client.Shell.Works;

/// <summary>The last thing that was saved, and how to take it back; it is offered on every page until the next one or until it is put away.</summary>
public sealed class LastDeed
{
    Func<Task<string?>>? _undo;

    public event Action? Changed;

    /// <summary>What was done, e.g. "Order saved"; empty when there is nothing to take back.</summary>
    public string Words { get; private set; } = "";

    /// <summary>Why it could not be taken back.</summary>
    public string? Why { get; private set; }

    public bool CanUndo => _undo is not null;

    /// <param name="undo">Puts it back as it was; answers why not, or null when it stands as before.</param>
    public void Did(string words, Func<Task<string?>> undo) => Set(words, undo, null);

    /// <summary>Once only; when it was refused it may be tried again.</summary>
    public async Task Undo()
    {
        if (_undo is not { } undo) return;
        _undo = null;
        var why = await undo();
        Set(why is null ? "Taken back: it stands as before." : Words, why is null ? null : undo, why);
    }

    public void PutAway() => Set("", null, null);

    void Set(string words, Func<Task<string?>>? undo, string? why)
    {
        (Words, _undo, Why) = (words, undo, why);
        Changed?.Invoke();
    }
}
