namespace WitnessMark.Web.Client.Outbox;

/// <summary>What the last answers tell of the host: whether they were its own or copies kept here, and whether both clocks agree.</summary>
public sealed class HostStanding(TimeProvider clock)
{
    /// <summary>Clocks further apart than this are spoken of.</summary>
    static readonly TimeSpan Agreed = TimeSpan.FromMinutes(2);

    /// <summary>When the copy shown was made; null while the host answers itself.</summary>
    public DateTimeOffset? AsOf { get; private set; }

    /// <summary>How far this device's clock is ahead of the host's; null while they agree.</summary>
    public TimeSpan? Ahead { get; private set; }

    public event Action? Changed;

    /// <param name="keptAt">When the answer was kept on this device; null when it is the host's own.</param>
    /// <param name="date">The host's clock when it answered.</param>
    public void Heard(DateTimeOffset? keptAt, DateTimeOffset? date)
    {
        var ahead = keptAt is null && date is { } at && clock.GetUtcNow() - at is var apart && apart.Duration() > Agreed ? apart : keptAt is null ? null : Ahead;
        if (AsOf == keptAt && (Ahead is null) == (ahead is null)) return;
        (AsOf, Ahead) = (keptAt, ahead);
        Changed?.Invoke();
    }

    /// <summary>What is wrong with the clock, in a few words; null when nothing is.</summary>
    public string? ClockApart => Ahead is { } ahead ? $"this clock is {Words(ahead.Duration())} {(ahead > TimeSpan.Zero ? "ahead" : "behind")}" : null;

    /// <summary>The same with what to do.</summary>
    public string? ClockWords => Ahead is { } ahead
        ? $"This device's clock is {Words(ahead.Duration())} {(ahead > TimeSpan.Zero ? "ahead of" : "behind")} the host's. Set it right: entries carry its time as it stands."
        : null;

    static string Words(TimeSpan apart) => apart.TotalHours < 2 ? $"{apart.TotalMinutes:0} minutes" : apart.TotalDays < 2 ? $"{apart.TotalHours:0} hours" : $"{apart.TotalDays:0} days";
}
