using System.Collections.Immutable;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>Sends what waits: pictures first, then the decisions that others stand on, then entries in the order that they lean on each other, then the other decisions.</summary>
public sealed partial class Tray
{
    /// <summary>Waits between tries while the host does not answer, s.</summary>
    static readonly int[] Patience = [1, 2, 4, 8, 15];

    /// <summary>Quiet time before a decision that is being typed is sent, and between looks while another page sends, ms.</summary>
    const int Quiet = 400, Elsewhere = 1000;

    readonly Dictionary<string, DateTimeOffset> _touched = [];

    CancellationTokenSource _nap = new();
    bool _sending;
    int _failures;

    /// <summary>Tries at once: the link may be back.</summary>
    public void Wake()
    {
        _nap.Cancel();
        _nap = new();
        _ = Send();
    }

    /// <summary>Sends what waits until the tray is empty but for what needs a person.</summary>
    public async Task Send()
    {
        if (_sending) return;
        _sending = true;
        try
        {
            while (Lying.Waiting > 0)
            {
                if (!await shelf.Turn())
                {
                    await Nap(Elsewhere);
                    await Reread();
                    continue;
                }
                bool answered;
                try
                {
                    await Reread();
                    answered = await Round();
                }
                finally
                {
                    shelf.EndTurn();
                }
                (_failures, var rest) = answered ? (0, Due()) : (_failures + 1, 1000 * Patience[Math.Min(_failures, Patience.Length - 1)]);
                Changed?.Invoke();
                if (rest > 0) await Nap(rest);
            }
        }
        catch (NotKeptException e)
        {
            KeepsNothing = e.Message;
        }
        finally
        {
            _sending = false;
            Changed?.Invoke();
        }
    }

    /// <returns>False when the host is away, or does not know this device.</returns>
    async Task<bool> Round()
    {
        foreach (var picture in Lying.Pictures.Values.Where(p => p.Refusal is null))
            if (!await SendPicture(picture)) return false;
        if (!await SendDecisions(d => Kinds.Depth(d.Kind) >= 0)) return false;
        foreach (var batch in Batches.Of(Lying.Entries.Values.Where(e => e.Refusal is null)))
            if (!await SendEntries(batch)) return false;
        return await SendDecisions(d => Kinds.Depth(d.Kind) < 0);
    }

    async Task<bool> SendDecisions(Func<Unsaved, bool> these)
    {
        foreach (var decision in Lying.Decisions.Values.Where(d => these(d) && !d.NeedsYou && Rest(d) <= 0).OrderBy(d => Kinds.Depth(d.Kind)))
            if (!await SendDecision(decision)) return false;
        return true;
    }

    async Task<bool> SendPicture(UnsentPicture picture)
    {
        var said = Heard(picture.Id, await carrier.Carry("api/pictures", await shelf.Picture(picture.Id)));
        if (said is Fate.Away or Fate.Unpaired) return false;
        await _gate.WaitAsync();
        try
        {
            if (said == Fate.Done) await shelf.PictureSent(picture.Id);
            else await shelf.RefusePicture(picture.Id, _last.Words!);
            Lying = Lying with { Pictures = said == Fate.Done ? Lying.Pictures.Remove(picture.Id) : Lying.Pictures.SetItem(picture.Id, picture with { Refusal = _last.Words }) };
        }
        finally
        {
            _gate.Release();
        }
        Tell(picture.Id, _last);
        return true;
    }

    /// <summary>A batch that is refused for one of its entries is halved until that one stands alone: the others still go.</summary>
    async Task<bool> SendEntries(ImmutableArray<Unsent> batch)
    {
        var said = Heard(batch[0].Key, await carrier.Carry(HttpMethod.Post, batch[0].Address, Batches.Body(batch)));
        if (said is Fate.Away or Fate.Unpaired)
        {
            foreach (var entry in batch) Tell(entry.Key, _last);
            return false;
        }
        if (said == Fate.Done)
        {
            var now = clock.GetUtcNow();
            await Settle(_ => new Shift
            {
                Drops = [.. batch.Select(e => (Shift.EntryStore, e.Key))],
                Sent = [.. batch.Select(e => new Sent(e.Kind, e.Address, e.Text, 0, now, e.Key))],
            });
        }
        else if (batch.Length > 1)
            return await SendEntries(batch[..(batch.Length / 2)]) && await SendEntries(batch[(batch.Length / 2)..]);
        else
        {
            var words = _last.Words!;
            await Settle(l => l.Entries.ContainsKey(batch[0].Key) ? new Shift { Entries = [batch[0] with { Refusal = words }] } : new());
        }
        foreach (var entry in batch)
        {
            Tell(entry.Key, _last);
            if (said == Fate.Done) Acknowledged?.Invoke(entry.Id);
        }
        Changed?.Invoke();
        return true;
    }

    async Task<bool> SendDecision(Unsaved decision)
    {
        var sent = decision.Trying();
        if (!sent.Tried.SequenceEqual(decision.Tried))
            await Settle(l => l.Decisions.GetValueOrDefault(sent.Address) is { } now ? new Shift { Decisions = [now with { Tried = sent.Tried }] } : new());
        var said = Heard(sent.Address, await carrier.Carry(HttpMethod.Put, sent.Address, Batches.Body(sent.Text, sent.BasedOn)));
        var answer = _last;
        if (said is Fate.Away or Fate.Unpaired) return false;
        // What stands may be an earlier sending of this device whose answer was lost: that is no clash, only news.
        var own = said == Fate.Clash && sent.Tried.Any(t => Spelling.Same(t, answer.Words!));
        await Settle(l => l.Decisions.GetValueOrDefault(sent.Address) is { } now ? After(now, sent, answer, own) : new());
        if (said == Fate.Done || own) _saved[sent.Address] = (sent.BasedOn, answer.Version);
        if (!own) Tell(sent.Address, answer);
        else if (!Lying.Decisions.ContainsKey(sent.Address)) Tell(sent.Address, answer with { Fate = Fate.Done });
        Changed?.Invoke();
        return true;
    }

    /// <summary>What still types rests a moment, ms; 0 when it can go.</summary>
    double Rest(Unsaved decision) => _touched.TryGetValue(decision.Address, out var at) ? Math.Max(0, Quiet - (clock.GetUtcNow() - at).TotalMilliseconds) : 0;

    int Due()
    {
        var waiting = Lying.Decisions.Values.Where(d => !d.NeedsYou).ToList();
        return Lying.Waiting > waiting.Count || waiting.Count == 0 ? 0 : (int)Math.Ceiling(waiting.Min(Rest));
    }

    async Task Nap(int milliseconds)
    {
        try
        {
            await Task.Delay(TimeSpan.FromMilliseconds(milliseconds), clock, _nap.Token);
        }
        catch (OperationCanceledException)
        {
            // Woken: the link may be back.
        }
    }

    /// <summary>Looks at the shelf anew: another page of this browser may have put something there, or sent it.</summary>
    async Task Reread()
    {
        await _gate.WaitAsync();
        try
        {
            var read = await shelf.Read(withSent: false);
            var gone = Lying.Entries.Keys.Where(k => !read.Entries.ContainsKey(k)).ToList();
            var sent = gone.Select(k => Lying.Entries[k]).Select(e => new Sent(e.Kind, e.Address, e.Text, 0, clock.GetUtcNow(), e.Key));
            Lying = read with { Sent = Lying.Sent.SetItems(sent.Select(s => KeyValuePair.Create(s.Key, s))) };
            foreach (var key in gone.Where(k => Guid.TryParse(k, out _))) Acknowledged?.Invoke(Guid.Parse(key));
        }
        finally
        {
            _gate.Release();
        }
    }
}
