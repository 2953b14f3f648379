using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice;

/// <summary>What makes a row of the hours log fit to be kept: null when it is, else the sentence that says what is wrong.</summary>
public static class HoursCheck
{
    /// <summary>Longest entry, minutes; longer work is written day by day.</summary>
    public const double LongestMinutes = 24 * 60;

    /// <summary>How far a device's clock may be ahead of the reader's.</summary>
    static readonly TimeSpan ClockError = TimeSpan.FromDays(1);

    /// <summary>A device that lost its time counts from 1970 or earlier; hours typed from old notebooks stay possible.</summary>
    static readonly DateTimeOffset Earliest = new(1950, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static Refusal? Of(Started row, DateTimeOffset now) =>
        Id("start id", row.Id) ?? Id("job", row.JobId) ?? Moment("start", row.At, now) ?? Text("device", row.Device);

    public static Refusal? Of(HoursEntry row, DateTimeOffset now) =>
        Id("entry id", row.Id) ?? Id("job", row.JobId)
        ?? (row.Start == Guid.Empty ? Refusal.Of("start", null, "give the id of the start it closes, or none where the hours were typed") : null)
        ?? (row.Minutes is >= 1 and <= LongestMinutes ? null : Refusal.Of("minutes", $"{row.Minutes}", $"give 1 to {LongestMinutes}; write longer work day by day"))
        ?? Moment("start", row.StartedAt, now) ?? Text("note", row.Note) ?? Text("device", row.Device);

    public static Refusal? Of(HoursWithdrawal row, DateTimeOffset now) =>
        Id("withdrawal id", row.Id) ?? Id("entry taken back", row.EntryId)
        ?? Moment("taken back", row.At, now) ?? Text("reason", row.Reason) ?? Text("device", row.Device);

    static Refusal? Id(string field, Guid id) => id == Guid.Empty ? Refusal.Of(field, null, "it is made where the row is taken") : null;

    static Refusal? Moment(string field, DateTimeOffset at, DateTimeOffset now) =>
        at > now + ClockError ? Refusal.Of(field, $"{at:yyyy-MM-dd HH:mm}", $"it lies ahead of now, {now:yyyy-MM-dd HH:mm}; set the device's clock or type the day again")
        : at < Earliest ? Refusal.Of(field, $"{at:yyyy-MM-dd HH:mm}", $"give a day from {Earliest:yyyy} on")
        : null;

    static Refusal? Text(string field, string? text) =>
        text is null ? Refusal.Of(field, null, "it may be empty, but must be there")
        : text.Length > Check.LongestText ? Refusal.Of(field, text, $"at most {Check.LongestText} characters are kept")
        : null;
}
