using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;

namespace WitnessMark.FrontOffice.SplitPressing;

/// <summary>A pressing to be split into pieces that the shop can fold.</summary>
public sealed record SplitRequest(FaceModel Model)
{
    public Shop Shop { get; init; } = Shop.Usual;

    public SplitWork Work { get; init; } = SplitWork.Usual;

    /// <summary>How the length of sheet in a bend is found.</summary>
    public BendMethod Method { get; init; } = new Din6935();

    /// <summary>For plug welds; null: body practice for thin sheet, the plate rule above 3 mm.</summary>
    public PlugRule? Plugs { get; init; }
}

/// <summary>The splits found, least work first, each with its kit.</summary>
public sealed record SplitResult(FaceModel Model, SplitAnswer Answer, ImmutableArray<Kit> Kits);

/// <summary>From a pressing as typed to pieces, welds and setting tools.</summary>
public static class SplitPressing
{
    /// <summary>A pressing with its points in space, or a folded part as <c>wmark blank</c> reads it.</summary>
    /// <param name="bytes">UTF-8, at most 16 MB.</param>
    public static Parsed<FaceModel> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            var text = TextFile.Decode(bytes);
            if (!text.Contains("\"points\"", StringComparison.Ordinal) && text.Contains("\"bends\"", StringComparison.Ordinal))
            {
                var tree = BracketFile.Read(bytes);
                return tree.Ok ? FaceModel.Of(FromFolded.Of(tree.Value)) : tree.Refusal!;
            }
            var pressing = PressingJson.Read(text);
            return pressing.Ok ? FaceModel.Of(pressing.Value) : pressing.Refusal!;
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    /// <param name="stop">Ends the search with the best so far.</param>
    public static Parsed<SplitResult> Run(SplitRequest request, IProgress<SplitProgress>? progress = null, CancellationToken stop = default)
    {
        var answer = Splitter.Find(request.Model, ToolsOf(request.Shop), request.Work, request.Method, progress, stop);
        if (!answer.Ok) return answer.Refusal!;
        var kits = ImmutableArray.CreateBuilder<Kit>();
        foreach (var choice in answer.Value.Choices)
        {
            var kit = SplitKit.Of(request.Model, choice, request.Plugs);
            if (!kit.Ok) return kit.Refusal!;
            kits.Add(kit.Value);
        }
        return new SplitResult(request.Model, answer.Value, kits.ToImmutable());
    }

    /// <summary>Folder, vice and the largest sheet of a shop.</summary>
    static SheetShop ToolsOf(Shop shop)
    {
        var sheet = shop.Stock.Sheets.MaxBy(s => s.Area) ?? new("", 1e5, 1e5);
        return new(ShopFolder.Of(shop), shop.Vice?.JawWidth ?? 0, shop.Vice?.MaxThickness ?? 0, sheet.Width, sheet.Height);
    }
}
