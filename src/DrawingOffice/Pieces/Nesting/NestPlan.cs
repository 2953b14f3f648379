using System.Collections.Immutable;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Pieces.Nesting;

/// <summary>A size of sheet that can be had, mm.</summary>
public sealed record StockSize(string Name, double Width, double Height)
{
    public double Area => Width * Height;
}

/// <summary>How pieces may be laid.</summary>
/// <param name="Gap">Left between pieces for the cut, mm; none is kept to the sheet's edge.</param>
public sealed record NestOptions(double Gap = 3)
{
    /// <summary>The grain runs along the sheet and the piece's x lies along it: pieces are turned end for end only.</summary>
    public bool Grain { get; init; }

    /// <summary>Turns tried in a full turn, 1 to 72; a grain leaves two.</summary>
    public int Turns { get; init; } = 4;

    /// <summary>Orders of the pieces tried on each size of sheet.</summary>
    public int Orders { get; init; } = 24;

    public ulong Seed { get; init; } = 1;
}

/// <summary>One piece where it lies.</summary>
/// <param name="Piece">Turned over already when it is of the other hand.</param>
/// <param name="Pose">Takes the piece to the sheet, mm from the sheet's bottom left.</param>
public sealed record Laid(Piece Piece, bool TurnedOver, Pose2 Pose);

/// <param name="Used">Length of sheet from the left that the pieces take, mm; the rest is one offcut.</param>
public sealed record NestedSheet(StockSize Size, double Thickness, ImmutableArray<Laid> Pieces, double Used);

/// <summary>Pieces of one or more thicknesses laid on stock sheets by their true outlines.</summary>
/// <param name="TooLarge">Names of pieces that fit no sheet on the list.</param>
/// <param name="LeastArea">Metal in all outlines laid, mm²: no laying takes less.</param>
/// <param name="Tried">Orders tried in all.</param>
public sealed record NestPlan(ImmutableArray<NestedSheet> Sheets, ImmutableArray<string> TooLarge, double LeastArea, int Tried)
{
    public double Bought => Sheets.Sum(s => s.Size.Area);

    /// <summary>Share of the bought area that is not piece, 0 to 1.</summary>
    public double Waste => Bought > 0 ? 1 - LeastArea / Bought : 0;

    /// <summary>"2 sheets 1000 × 500" and so on.</summary>
    public IEnumerable<(double Thickness, StockSize Size, int Count)> ToBuy =>
        Sheets.GroupBy(s => (s.Thickness, s.Size)).Select(g => (g.Key.Thickness, g.Key.Size, g.Count()));
}
