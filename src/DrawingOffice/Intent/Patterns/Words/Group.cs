using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Offers;
using WitnessMark.DrawingOffice.Intent.Patterns.Search;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Words;

/// <summary>Features that share one thing, as a person would say it in one breath.</summary>
/// <param name="From">The hypotheses that it was put together from; empty when it follows from others.</param>
sealed record Group(PatternKind Kind, ImmutableArray<int> Features, ImmutableArray<Taken> From)
{
    public string? About { get; init; }

    public Nominal? Nominal { get; init; }

    public Frame? Frame { get; init; }

    /// <summary>Stations are counted across the frame.</summary>
    public bool Across { get; init; }

    public Ring? Ring { get; init; }

    public Standing Standing => From.Any(t => t.Forced) ? Standing.Forced : From.Any(t => t.Verdict.Freedom > 0) ? Standing.Accepted : Standing.Implied;
}
