using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>Draws how far the person's guesses are out.</summary>
public interface IOwnPace
{
    /// <summary>
    /// For each group of jobs the natural logarithm of the factor that all their hours share in this future; allocates nothing.
    /// </summary>
    void Draw(Chance chance, ReadOnlySpan<PaceGroup> groups, Span<double> logs);

    /// <summary>Standard deviation of a single job's own logarithm of the factor, 0 or more; independent between jobs.</summary>
    double JobSd { get; }
}

/// <summary>Jobs of one kind on one system.</summary>
public readonly record struct PaceGroup(WorkKind Kind, Guid? System);

/// <summary>One lognormal factor of mean 1 for all jobs.</summary>
/// <param name="Variation">Coefficient of variation, 0 to 2.</param>
public sealed record SharedPace(double Variation, double JobSd) : IOwnPace
{
    /// <summary>
    /// Common practice: who is slow at one job is slow at the next, and without it a long list would look far too certain.
    /// </summary>
    public static SharedPace Usual { get; } = new(0.25, 0);

    public void Draw(Chance chance, ReadOnlySpan<PaceGroup> groups, Span<double> logs)
    {
        var s2 = Math.Log(1 + Variation * Variation);
        logs.Fill(Math.Sqrt(s2) * chance.Normal() - s2 / 2);
    }
}
