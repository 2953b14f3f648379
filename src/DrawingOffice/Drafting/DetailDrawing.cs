using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>What the person wants of a drawing.</summary>
public sealed record DrawingOptions
{
    /// <summary>Sheets that may be used, best first.</summary>
    public ImmutableArray<PaperSize> Papers { get; init; } = [PaperSize.A4, PaperSize.A4.Turned, PaperSize.A3.Turned];

    /// <summary>Null: the largest that fits, at most full size unless the part is small.</summary>
    public DrawingScale? Scale { get; init; }

    public Writing Writing { get; init; } = Writing.Millimetres;

    public Knowledge Knowledge { get; init; } = new();
}

/// <summary>
/// A flat part drawn with all that is needed to make it: a dimensioned view, a hole table, a dimension table with made-to size beside measured value,
/// and a title block. All lettering is 2.5 mm high or more.
/// </summary>
/// <param name="Sheets">The drawing first, then sheets with what did not fit on it.</param>
/// <param name="Dimensions">Each dimension in the view, in number order.</param>
/// <param name="Holes">Each hole and slot under its letter.</param>
/// <param name="Cautions">Plain sentences on what the drawing does not show.</param>
public sealed record DetailDrawing(
    ImmutableArray<PrintRoom.Sheet> Sheets, ImmutableArray<DimensionItem> Dimensions, ImmutableArray<Hole> Holes,
    DrawingScale Scale, PaperSize Paper, ImmutableArray<string> Cautions)
{
    /// <exception cref="RefusedException">The part is empty, not finite, or fits no offered sheet at the asked scale.</exception>
    public static DetailDrawing Draw(FlatPart part, TitleFields title, DrawingOptions? options = null)
    {
        var wish = options ?? new();
        Acceptance.Check(part);
        if (wish.Papers.IsDefaultOrEmpty) throw new RefusedException(Refusal.Of("paper", null, "give at least one sheet size"));
        var block = title with { Spreads = !part.Designed };
        var box = part.Bounds;
        IEnumerable<DrawingScale> scales = wish.Scale is { } asked ? [asked] : DrawingScale.Worth(Math.Max(box.Width, box.Height));
        foreach (var scale in scales)
        {
            var view = PartView.Draw(part, scale.Factor, wish.Knowledge, wish.Writing);
            var cautions = LeftOut(view);
            var blocks = Blocks(part, view, wish, cautions);
            if (Layout.Best(wish.Papers, view.Bounds, blocks, block) is not { } layout) continue;
            var sheets = layout.Draw(view.Marks, view.Bounds, blocks, block, scale, wish.Writing.Units);
            return new(sheets, view.Items, [.. view.Holes], scale, layout.Paper, cautions);
        }
        throw new RefusedException(Refusal.Of("scale", wish.Scale?.ToString(), "take a smaller scale or a larger sheet: with its dimensions the part does not fit"));
    }

    static ImmutableArray<string> LeftOut(PartView view)
    {
        var left = ImmutableArray.CreateBuilder<string>();
        if (view.Undimensioned)
            left.Add($"More than {Choice.MostRunning} places along one side: only the size over all is dimensioned. Mark out from the 1:1 template or the DXF.");
        if (view.Holes.Count > PartView.MostLettered)
            left.Add($"More than {PartView.MostLettered} holes: their letters are left out of the view. Find them by x and y from the table.");
        return left.ToImmutable();
    }

    static ImmutableArray<Table> Blocks(FlatPart part, PartView view, DrawingOptions wish, ImmutableArray<string> cautions)
    {
        var blocks = ImmutableArray.CreateBuilder<Table>();
        if (view.Holes.Count > 0) blocks.Add(Lists.Holes(view.Holes, part, view.Given, wish.Knowledge, wish.Writing));
        if (view.Items.Length > 0) blocks.Add(Lists.Dimensions(view.Items, part, wish.Writing));
        if (view.Undimensioned && Lists.Corners(part, wish.Writing) is { } corners) blocks.Add(corners);
        var notes = part.Notes.AddRange(cautions).Select((n, i) => (ImmutableArray<string>)[$"{i + 1}", string.Join('\n', Letter.Lines(n, 100, Letter.Small))]);
        if (notes.Any()) blocks.Add(new("Notes", [new(""), new("")], [.. notes]));
        return blocks.ToImmutable();
    }
}
