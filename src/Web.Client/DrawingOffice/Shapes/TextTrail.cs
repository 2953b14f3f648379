namespace WitnessMark.Web.Client.DrawingOffice.Shapes;

/// <summary>
/// The texts a shape has had, to go back and forth between. What is typed or dragged in one go, without a breath between, is one step.
/// </summary>
public sealed class TextTrail(TimeProvider clock)
{
    static readonly TimeSpan s_breath = TimeSpan.FromMilliseconds(900);

    const int Most = 200;

    readonly List<string> _back = [], _forth = [];
    DateTimeOffset _last = DateTimeOffset.MinValue;

    public bool CanUndo => _back.Count > 0;

    public bool CanRedo => _forth.Count > 0;

    /// <param name="before">The text that is left.</param>
    public void Left(string before)
    {
        var now = clock.GetUtcNow();
        if (now - _last > s_breath || _back.Count == 0) _back.Add(before);
        if (_back.Count > Most) _back.RemoveAt(0);
        _last = now;
        _forth.Clear();
    }

    public string Undo(string present) => Step(_back, _forth, present);

    public string Redo(string present) => Step(_forth, _back, present);

    string Step(List<string> from, List<string> to, string present)
    {
        if (from.Count == 0) return present;
        to.Add(present);
        var text = from[^1];
        from.RemoveAt(from.Count - 1);
        _last = DateTimeOffset.MinValue;
        return text;
    }
}
