namespace WitnessMark.Web.Client.Shell.Works;

/// <summary>
/// All work that takes longer than a breath, one list for the whole app: it goes on when its page is left, tells how far it is, can be
/// stopped from anywhere, and its result waits under its key until it is asked for.
/// </summary>
/// <example><code>
/// var work = works.Start("pictures/" + vehicle, "Keeping 12 pictures", $"vehicle/{vehicle}/pictures", async (told, stop) => { …; told(0.5); …; return kept; });
/// work.Changed += …;   works.Find&lt;int&gt;("pictures/" + vehicle) finds it again when the page is opened anew.
/// </code></example>
public sealed class LongWork(TimeProvider clock)
{
    /// <summary>Finished works that are kept for their pages; the oldest goes first.</summary>
    const int MostFinished = 12;

    readonly List<InHand> _all = [];
    readonly SemaphoreSlim _room = new(1, 1);

    /// <summary>A work was begun, got on, ended or was put away.</summary>
    public event Action? Changed;

    public IReadOnlyList<InHand> All => _all;

    /// <summary>Begins at once, beside whatever else runs: for work that mostly waits for the host or the disk.</summary>
    /// <param name="key">What it is found by; a work of the same key is stopped and put away first.</param>
    /// <param name="name">What a person calls it, e.g. "2000 futures of the plan".</param>
    /// <param name="where">The page on which its result is looked at.</param>
    /// <param name="run">Told is called with the share done, 0 to 1.</param>
    /// <param name="of">All that was asked, so that a page opened anew knows whether the result is still an answer.</param>
    public InHand<T> Start<T>(string key, string name, string where, Func<Action<double>, CancellationToken, Task<T>> run, string of = "") => Take(new(key, name, where, of, clock), run, null);

    /// <summary>Begins when the back room is free: one reckoning at a time, so that stopping one ends no other.</summary>
    public InHand<T> Queue<T>(string key, string name, string where, Func<Action<double>, CancellationToken, Task<T>> run, string of = "") => Take(new(key, name, where, of, clock), run, _room);

    /// <summary>Null when nothing of that key was begun, it was put away, or it was asked of something else.</summary>
    public InHand<T>? Find<T>(string key, string? of = null) => Under<T>(key).FirstOrDefault(w => w.Key == key && (of is null || of == w.Of));

    /// <summary>Those whose key begins so, the oldest first.</summary>
    public IEnumerable<InHand<T>> Under<T>(string key) => _all.OfType<InHand<T>>().Where(w => w.Key.StartsWith(key, StringComparison.Ordinal));

    /// <summary>Stops it if it runs, and lets go of it and its result.</summary>
    public void PutAway(InHand work)
    {
        work.Stop();
        if (_all.Remove(work)) Changed?.Invoke();
    }

    InHand<T> Take<T>(InHand<T> work, Func<Action<double>, CancellationToken, Task<T>> run, SemaphoreSlim? turn)
    {
        foreach (var former in _all.Where(w => w.Key == work.Key).ToList()) PutAway(former);
        foreach (var old in _all.Where(w => w.Ended).SkipLast(MostFinished - 1).ToList()) _all.Remove(old);
        _all.Add(work);
        work.Changed += () => Changed?.Invoke();
        _ = work.Run(run, turn);
        Changed?.Invoke();
        return work;
    }
}
