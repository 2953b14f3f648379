namespace WitnessMark.Stores;

/// <summary>
/// A reading just as the person wrote it: an observed fact, appended and never altered. Nothing is parsed here; reading the
/// value again, with the instrument list as it stands then, is the engine's work.
/// </summary>
/// <param name="Id">Made where the reading was taken; sending it twice records it once.</param>
/// <param name="To">Empty where the kind needs one feature only.</param>
/// <param name="Value">As written, with its unit: <c>3 5/16"</c>.</param>
/// <param name="PlusMinus">As written; empty where the instrument says it.</param>
/// <param name="TakenAt">By the clock of the device it was taken on.</param>
/// <param name="Device">Which phone or bench it came from; free text.</param>
public sealed record ReadingEntry(
    Guid Id, Guid SampleId, string Kind, string From, string To, string Value, string PlusMinus,
    string Instrument, string Note, DateTimeOffset TakenAt, string Device);

/// <summary>Taking a reading back. The reading stays on record; it no longer stands.</summary>
public sealed record Withdrawal(Guid Id, Guid ReadingId, string Reason, DateTimeOffset At, string Device);

/// <summary>All that was ever written about a sample, in the order it arrived.</summary>
public sealed record ReadingHistory(IReadOnlyList<ReadingEntry> Readings, IReadOnlyList<Withdrawal> Withdrawals)
{
    /// <summary>The readings not withdrawn, in the order they arrived.</summary>
    public IReadOnlyList<ReadingEntry> Standing
    {
        get
        {
            var gone = Withdrawals.Select(w => w.ReadingId).ToHashSet();
            return [.. Readings.Where(r => !gone.Contains(r.Id))];
        }
    }
}
