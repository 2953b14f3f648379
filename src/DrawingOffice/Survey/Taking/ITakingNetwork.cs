namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>One reading as the choice sees it: how it answers to the unknowns, and how well it can be taken.</summary>
/// <param name="Std">Standard uncertainty, in the reading's unit.</param>
readonly record struct TakeRow(int[] Columns, double[] Rates, double Std)
{
    public double Weight => 1 / (Std * Std);
}

/// <summary>
/// A survey before it is taken, flat or in space: linear at the sketch. The choice of the shortest list knows no more of it than this.
/// </summary>
interface ITakingNetwork
{
    /// <summary>By unknown, the feature it belongs to, from 0 without gaps. Unknowns are in mm (turns as turn × lever).</summary>
    int[] BlockOf { get; }

    /// <summary>Motions of the whole part, which no reading sees.</summary>
    double[][] Datum { get; }

    /// <summary>Readings taken already; they need a check like any other.</summary>
    IReadOnlyList<TakeRow> Taken { get; }

    /// <summary>What holds without being read: conditions; never in need of a check.</summary>
    IReadOnlyList<TakeRow> Given { get; }

    /// <summary>What can be read with the tools at hand.</summary>
    IReadOnlyList<TakeRow> Candidates { get; }

    /// <summary>Distances and sizes that are to come out within the wanted ±.</summary>
    IReadOnlyList<TakeRow> Dimensions { get; }
}

/// <summary>A reading that a hand with the tools at hand could take.</summary>
/// <param name="From">Feature, by its place in the sample.</param>
/// <param name="To">The same; −1 for none.</param>
/// <param name="Expected">What it will read by the sketch, mm or radians: rough.</param>
sealed record TakeCandidate<TKind>(TKind Kind, int From, int To, double Expected, BenchTool Tool, TakeRow Row);

/// <summary>What the list of readings needs to know beyond the choice: what each candidate is, and whose unknowns are whose.</summary>
interface ITakingNetwork<TKind> : ITakingNetwork
{
    /// <summary>By candidate, in the order of <see cref="ITakingNetwork.Candidates"/>.</summary>
    TakeCandidate<TKind> At(int candidate);

    string Id(int feature);

    /// <summary>The features that the list has to hold, with their unknowns.</summary>
    IEnumerable<(int Feature, IEnumerable<int> Unknowns)> Held { get; }
}
