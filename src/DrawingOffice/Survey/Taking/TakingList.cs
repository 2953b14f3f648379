using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>One reading to take, on a flat part (<see cref="ReadingKind"/>) or on one in space (<see cref="Solid.SolidReadingKind"/>).</summary>
/// <param name="Number">From 1, in the order of working; readings taken already are not numbered here.</param>
/// <param name="Expected">What it will read by the sketch, mm or radians: rough.</param>
/// <param name="Redundancy">How far the others on the list check it: 0 not at all, 1 fully.</param>
public sealed record TakingStep<TKind>(int Number, TKind Kind, string From, string? To, double Expected, string Instrument, Way Way, double Redundancy);

/// <summary>The shortest list found.</summary>
/// <param name="Steps">In the order of working.</param>
/// <param name="Least">No list can be shorter: the counting bound.</param>
/// <param name="Undetermined">What no reading that the tools can take would settle; empty when all is determinate.</param>
/// <param name="Unchecked">Numbers of the steps that nothing checks well enough.</param>
/// <param name="LargestStd">Largest standard uncertainty of a centre distance or size with the list taken, mm; null while something is undetermined.</param>
/// <param name="Cautions">What the sheet cannot know.</param>
public sealed record TakingList<TKind>(
    ImmutableArray<TakingStep<TKind>> Steps, int Least, ImmutableArray<string> Undetermined, ImmutableArray<int> Unchecked, double? LargestStd, ImmutableArray<string> Cautions)
{
    /// <summary>Everything held, and every reading checked by the others.</summary>
    public bool Complete => Undetermined.IsEmpty && Unchecked.IsEmpty;
}
