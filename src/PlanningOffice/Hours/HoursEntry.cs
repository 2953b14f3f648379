namespace WitnessMark.PlanningOffice;

/// <summary>The tap that starts the clock: an observed fact. It stays open until an <see cref="HoursEntry"/> names it.</summary>
public sealed record Started(Guid Id, Guid JobId, DateTimeOffset At, string Device);

/// <summary>Time worked on a job: an observed fact, appended and never altered; a correction is a withdrawal and a new entry.</summary>
/// <param name="Id">Made where it was taken; sending it twice records it once.</param>
/// <param name="Start">The tap it closes, or null where the hours were typed.</param>
/// <param name="Minutes">Above 0, at most 1440.</param>
public sealed record HoursEntry(Guid Id, Guid JobId, Guid? Start, DateTimeOffset StartedAt, double Minutes, string Note, string Device);

/// <summary>Taking an entry or a start back; it stays on record and no longer stands.</summary>
public sealed record HoursWithdrawal(Guid Id, Guid EntryId, string Reason, DateTimeOffset At, string Device);

/// <summary>All that was ever logged for a vehicle, in the order it arrived.</summary>
public sealed record HoursHistory(IReadOnlyList<Started> Starts, IReadOnlyList<HoursEntry> Entries, IReadOnlyList<HoursWithdrawal> Withdrawals)
{
    public IReadOnlyList<HoursEntry> Standing
    {
        get
        {
            var gone = Withdrawals.Select(w => w.EntryId).ToHashSet();
            return [.. Entries.Where(e => !gone.Contains(e.Id))];
        }
    }

    /// <summary>Starts neither stopped nor taken back.</summary>
    public IReadOnlyList<Started> Open
    {
        get
        {
            var closed = Withdrawals.Select(w => w.EntryId).Concat(Standing.Select(e => e.Start).OfType<Guid>()).ToHashSet();
            return [.. Starts.Where(s => !closed.Contains(s.Id))];
        }
    }
}

/// <summary>Keeps hours: all of a list or none of it. An id already recorded is left as it is.</summary>
public interface IHoursLog
{
    /// <returns>How many were new.</returns>
    Task<int> Append(IReadOnlyList<Started> rows, CancellationToken cancel = default);

    Task<int> Append(IReadOnlyList<HoursEntry> rows, CancellationToken cancel = default);

    Task<int> Withdraw(IReadOnlyList<HoursWithdrawal> rows, CancellationToken cancel = default);

    Task<HoursHistory> History(Guid vehicle, CancellationToken cancel = default);
}
