using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.PlanningOffice;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>A kit to be printed, nested and planned.</summary>
/// <param name="Name">File names begin with it; letters, figures and dashes.</param>
/// <param name="Title">Goes into every title block; each drawing adds its piece's name and thickness.</param>
/// <param name="Material">Of all pieces of sheet.</param>
public sealed record KitRequest(Kit Kit, string Name, TitleFields Title, Material Material)
{
    public PaperSize Paper { get; init; } = PaperSize.A4;

    /// <summary>Stamped into the files and printed on the card; null leaves files without a time.</summary>
    public DateTimeOffset? Created { get; init; }

    public Shop Shop { get; init; } = Shop.Usual;

    /// <summary>How many of the whole shape are made.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>The grain of the sheet is to run along every piece's x: pieces are laid end for end only.</summary>
    public bool Grain { get; init; }

    /// <summary>What the part itself brings: old paint, zinc, a tank, a brake or steering part.</summary>
    public ImmutableArray<Hazard> Hazards { get; init; } = [];
}
