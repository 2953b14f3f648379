using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.FoldRail;

/// <summary>A rail to be made.</summary>
public sealed record RailRequest(Rail Rail, Material Material)
{
    /// <summary>How the length of sheet in a bend is found.</summary>
    public BendMethod Method { get; init; } = new Din6935();

    /// <summary>1 follows the best way for each flange, 2 the next.</summary>
    public int Proposal { get; init; } = 1;

    /// <summary>Null leaves out what depends on the machine.</summary>
    public Folder? Folder { get; init; } = CutBlank.ShopFolder.Of(PlanningOffice.Shop.Usual);
}

/// <summary>The rail made, and the kit with the cautions of metal and machine.</summary>
/// <param name="Order">Of the bends; null where the rail is not made of flat faces, or without a folder.</param>
public sealed record RailResult(MadeRail Made, Kit Kit, BendOrder? Order)
{
    public ImmutableArray<Caution> Cautions => Kit.Cautions;
}

/// <summary>From stations to blank, strains and ways.</summary>
public static class FoldRail
{
    /// <summary>A rail as a person types it (docs/guide/rail.md), UTF-8.</summary>
    public static Parsed<Rail> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return RailJson.Read(TextFile.Decode(bytes));
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    /// <exception cref="RefusedException">The stations make no rail, or a hole lies where none can be.</exception>
    public static RailResult Run(RailRequest request)
    {
        var elongation = request.Material.Elongation.Low ?? request.Material.Elongation.High;
        var made = MadeRail.Of(request.Rail, request.Method, elongation, request.Proposal).Value;
        made = made with { Kit = made.Kit with { Strained = StrainPieces.Of(made.Form, made.Strains, WorkLimits.Of(elongation)) } };
        var tree = made.Chosen.All(w => w.Kind == WayKind.Fold) ? RailTree.Of(made.Form) : null;
        var metal = new Ductility(null, elongation);
        ImmutableArray<Caution> sharp = [.. Sharp(request.Rail, metal)];
        if (tree is null || request.Folder is not { } folder) return new(made, made.Kit with { Cautions = [.. sharp, .. made.Kit.Cautions] }, null);
        var order = BendOrder.Find(tree, Develop.Blank(tree, request.Method).Value, folder);
        ImmutableArray<Caution> cautions = [.. sharp, .. Check.MachineLimits(tree, folder), .. order.Cautions, .. made.Kit.Cautions];
        return new(made, made.Kit with { Cautions = cautions }, order);
    }

    static IEnumerable<Caution> Sharp(Rail rail, Ductility metal)
    {
        var least = metal.Elongation is > 0 and var e ? MinimumRadius.FromElongation(e, rail.Thickness) : 0;
        if (rail.InsideRadius < least)
            yield return new(CautionKind.SharpRadius, $"The folds have an inside radius of {rail.InsideRadius:0.0} mm; {least:0.0} mm is the least by an elongation of {metal.Elongation:0} %, a cautious rule: try a strip.", [], rail.InsideRadius, least);
    }
}
