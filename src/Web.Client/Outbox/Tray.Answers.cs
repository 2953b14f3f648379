using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>What the host's answers do: to what waits, and to those who asked.</summary>
public sealed partial class Tray
{
    readonly Dictionary<string, TaskCompletionSource<Answer>> _asked = [], _hearing = [];

    /// <summary>What this page has saved: the version that a row was built on and the one it became.</summary>
    readonly Dictionary<string, (int BasedOn, int Version)> _saved = [];

    Answer _last;

    /// <summary>The host did not answer the last try.</summary>
    public bool Away => _failures > 0;

    /// <summary>The host answers, but not to this device.</summary>
    public bool Unpaired { get; private set; }

    /// <summary>What becomes of a decision: asked before it is changed, answered when it is settled.</summary>
    internal Task<Answer> Settled(string key) => Asked(key).Task;

    /// <summary>What was changed while it was under way goes on waiting, on top of the version that now stands.</summary>
    Shift After(Unsaved now, Unsaved sent, Answer answer, bool own)
    {
        var changed = now.Text != sent.Text;
        if (own && (changed || !Spelling.Same(sent.Text, answer.Words!))) return new() { Decisions = [now with { BasedOn = answer.Version, Tried = [] }] };
        return answer.Fate switch
        {
            Fate.Done when changed => new() { Decisions = [now with { BasedOn = answer.Version, Tried = [] }] },
            Fate.Refused => changed ? new() : new() { Decisions = [now with { Refusal = answer.Words }] },
            Fate.Clash when !own => new() { Decisions = [now with { Theirs = answer.Words, TheirVersion = answer.Version }] },
            _ => new()
            {
                Drops = [(Shift.DecisionStore, now.Address)],
                Sent = [new(now.Kind, now.Address, answer.Words!, answer.Version, clock.GetUtcNow(), now.Address)],
            },
        };
    }

    Fate Heard(string key, Answer answer)
    {
        _last = answer;
        Unpaired = answer.Fate == Fate.Unpaired;
        if (answer.Fate is Fate.Away or Fate.Unpaired) Tell(key, answer);
        // A link that comes and goes is tried again soon; only one that stays away is waited for longer and longer.
        else _failures = 0;
        return answer.Fate;
    }

    /// <summary>Answers those who asked. Away is no end for a decision that is followed, only for a page that would hear at once.</summary>
    void Tell(string key, Answer answer)
    {
        if (answer.Fate is Fate.Away or Fate.Unpaired)
        {
            _hearing.GetValueOrDefault(key)?.TrySetResult(answer);
            return;
        }
        if (_asked.Remove(key, out var asked)) asked.TrySetResult(answer);
        _hearing.GetValueOrDefault(key)?.TrySetResult(answer);
    }

    TaskCompletionSource<Answer> Asked(string key)
    {
        if (_asked.TryGetValue(key, out var asked)) return asked;
        return _asked[key] = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }

    /// <summary>What the host says to something just kept; away when it says nothing in a moment.</summary>
    async Task<Answer> Hear(string key, TimeSpan? limit = null)
    {
        if (Away || Unpaired) return new(Fate.Away);
        var hearing = _hearing[key] = new(TaskCreationOptions.RunContinuationsAsynchronously);
        try
        {
            // It may have been settled before this was asked.
            if (!Lying.Entries.ContainsKey(key) && !Lying.Decisions.ContainsKey(key) && !Lying.Pictures.ContainsKey(key)) return new(Fate.Done);
            _ = Send();
            return await Task.WhenAny(hearing.Task, Task.Delay(limit ?? Hearing, clock)) == hearing.Task ? await hearing.Task : new(Fate.Away);
        }
        finally
        {
            _hearing.Remove(key);
        }
    }
}
