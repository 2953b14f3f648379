using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>A finished job: hours guessed before it began (the mean of the PERT-beta) and hours it took.</summary>
/// <param name="System">Null for work on the whole vehicle, which counts as a system of its own.</param>
public sealed record FinishedJob(WorkKind Kind, Guid? System, double Guessed, double Taken)
{
    public const double MostHours = 100_000;

    public Refusal? Wrong =>
        (Enum.IsDefined(Kind) ? null : Refusal.Of("kind of work", $"{Kind}", $"give one of {string.Join(", ", Enum.GetNames<WorkKind>())}"))
        ?? (System == Guid.Empty ? Refusal.Of("system", $"{System}", "give the system's own id, or none for the whole vehicle") : null)
        ?? Hours("guessed hours", Guessed) ?? Hours("taken hours", Taken);

    /// <summary>ln(taken / guessed).</summary>
    public double LogRatio => Math.Log(Taken / Guessed);

    static Refusal? Hours(string field, double hours) =>
        hours is > 0 and < MostHours ? null : Refusal.Of(field, $"{hours}", $"give hours above 0, below {MostHours}");
}
