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
