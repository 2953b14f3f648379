using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>
/// The out-tray: every entry is kept in the browser before it is shown, sent in the order it was made, and let go only when the host
/// has acknowledged it. Ids are made here, so an entry sent twice is recorded once.
/// </summary>
public sealed class Tray(PageScript page, Server server, DeskServer desk, TimeProvider clock)
{
    const string Prefix = "wm.unsent.";

    /// <summary>Waits between tries while the host does not answer, s.</summary>
    static readonly int[] Patience = [1, 2, 4, 8, 15];

    bool _sending;
    int _failures;

    /// <summary>The host did not answer the last try.</summary>
    public bool Away => _failures > 0;

    /// <summary>An entry that the host refused for good: the sentence is shown beside it.</summary>
    public Dictionary<Guid, string> Refusals { get; } = [];

    public event Action? Changed;

    public event Action<Unsent>? Acknowledged;

    /// <summary>Time-ordered, so that the tray keeps its order under sorted keys.</summary>
    public Guid NewId() => Guid.CreateVersion7(clock.GetUtcNow());

    /// <summary>Keeps what was seen; answers why not, or null when it is kept on this device.</summary>
    public async Task<string?> Append<T>(params ImmutableArray<T> facts) where T : class, IFact =>
        facts.Select(f => f.Wrong()?.Sentence).FirstOrDefault(w => w is not null) ?? (facts.IsEmpty ? null : (await desk.Append(facts)).Why());

    /// <summary>Keeps a decision under the version it was built on (0: new); answers why not, or null when it is kept on this device.</summary>
    public async Task<string?> Save<T>(T row, int basedOn = 0) where T : class, IDecision =>
        row.Wrong()?.Sentence ?? (await desk.Save(row, basedOn)).Why();

    /// <summary>The same for the hours.</summary>
    public async Task<string?> Append(Started row) => HoursCheck.Of(row, clock.GetUtcNow())?.Sentence ?? (await desk.Start(row)).Why();

    public async Task<string?> Append(HoursEntry row) => HoursCheck.Of(row, clock.GetUtcNow())?.Sentence ?? (await desk.Log(row)).Why();

    public async Task<string?> Append(HoursWithdrawal row) => HoursCheck.Of(row, clock.GetUtcNow())?.Sentence ?? (await desk.TakeBack(row)).Why();

    public IReadOnlyList<Unsent> Waiting() => [.. page.KeptUnder(Prefix).Select(Unsent.Read).OfType<Unsent>()];

    public void Put(Unsent entry)
    {
        page.Keep(Prefix + entry.Id.ToString("N"), entry.Text);
        Changed?.Invoke();
        _ = Send();
    }

    /// <summary>Lets go of an entry that the host has refused.</summary>
    public void Drop(Guid id)
    {
        page.Forget(Prefix + id.ToString("N"));
        Refusals.Remove(id);
        Changed?.Invoke();
    }

    /// <summary>Sends what waits, one after the other, until the tray is empty.</summary>
    public async Task Send()
    {
        if (_sending) return;
        _sending = true;
        try
        {
            while (Waiting().FirstOrDefault(u => !Refusals.ContainsKey(u.Id)) is { } next) await Send(next);
        }
        finally
        {
            _sending = false;
        }
    }

    async Task Send(Unsent entry)
    {
        var sent = entry.Reading is { } reading ? await server.Append(reading) : await server.Withdraw(entry.Withdrawal!);
        if (sent.Away)
        {
            _failures++;
            Changed?.Invoke();
            await Task.Delay(TimeSpan.FromSeconds(Patience[Math.Min(_failures, Patience.Length) - 1]), clock);
            return;
        }
        _failures = 0;
        if (sent.Refusal is { } sentence) Refusals[entry.Id] = sentence;
        else
        {
            page.Forget(Prefix + entry.Id.ToString("N"));
            Acknowledged?.Invoke(entry);
        }
        Changed?.Invoke();
    }
}
