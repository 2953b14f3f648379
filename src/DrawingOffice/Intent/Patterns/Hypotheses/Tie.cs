using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;

/// <summary>One equation that a meant shape obeys: <paramref name="Of"/> is 0.</summary>
/// <param name="Touched">Features whose unknowns it may depend on.</param>
/// <param name="LogRange">
/// Logarithm of the range, mm or rad, that the quantity would be spread over if nothing were meant; for a listed value the
/// logarithm of the stretch that the value holds in its list.
/// </param>
/// <param name="Of">From the unknowns of the survey to mm or rad. No shift or turn of the whole plan changes it.</param>
sealed record Tie(ImmutableArray<int> Touched, double LogRange, Func<double[], double> Of);

/// <summary>What may have been meant: conditions that stand or fall together.</summary>
/// <param name="Features">Features that share it; of a symmetric set pair after pair.</param>
/// <param name="LogPrior">Logarithm of the odds before measuring, the choice among alternatives taken off.</param>
sealed record Hypothesis(PatternKind Kind, ImmutableArray<int> Features, ImmutableArray<Tie> Parts, double LogPrior)
{
    /// <summary>The direction or centre that it leans on.</summary>
    public string? About { get; init; }

    public Nominal? Nominal { get; init; }

    /// <summary>Stations are counted across the frame, not along it.</summary>
    public bool Across { get; init; }

    /// <summary>The circle that it speaks of.</summary>
    public Offers.Ring? Ring { get; init; }

    /// <summary>The frame that it leans on.</summary>
    public Frame? Frame { get; init; }
}
