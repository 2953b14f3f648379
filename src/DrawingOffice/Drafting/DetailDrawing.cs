using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>What the person wants of a drawing.</summary>
public sealed record DrawingOptions
{
    /// <summary>Sheets that may be used, best first.</summary>
    public ImmutableArray<PaperSize> Papers { get; init; } = [PaperSize.A4Tall, PaperSize.A4Wide, PaperSize.A3Wide];

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
        Check(part, wish);
        var box = part.Bounds;
        IEnumerable<DrawingScale> scales = wish.Scale is { } asked ? [asked] : DrawingScale.Worth(Math.Max(box.Width, box.Height));
        foreach (var scale in scales)
        {
            var view = PartView.Draw(part, scale.Factor, wish.Knowledge, wish.Writing);
            var cautions = LeftOut(view);
            var blocks = Blocks(part, view, wish, cautions);
            if (Layout.Best(wish.Papers, view.Bounds, blocks, title) is not { } layout) continue;
            var sheets = layout.Draw(view, blocks, title, scale, wish.Writing.Units);
            return new(sheets, view.Items, [.. view.Holes], scale, layout.Paper, cautions);
        }
        throw new RefusedException(Refusal.Of("scale", wish.Scale?.ToString(), "take a smaller scale or a larger sheet: with its dimensions the part does not fit"));
    }

    static ImmutableArray<string> LeftOut(PartView view) => view.Undimensioned
        ? [$"More than {Choice.MostRunning} places along one side: only the size over all is dimensioned. Mark out from the 1:1 template or the DXF."]
        : [];

    static ImmutableArray<Table> Blocks(FlatPart part, PartView view, DrawingOptions wish, ImmutableArray<string> cautions)
    {
        var blocks = ImmutableArray.CreateBuilder<Table>();
        var datum = part.Datum?.At ?? new Vec2(part.Bounds.Left, part.Bounds.Bottom);
        if (view.Holes.Count > 0) blocks.Add(Lists.Holes(view.Holes, datum, part.Datum?.Id, view.HolesInView, wish.Knowledge, wish.Writing));
        if (view.Items.Length > 0) blocks.Add(Lists.Dimensions(view.Items, wish.Writing));
        var notes = part.Notes.AddRange(cautions).SelectMany((n, i) => Letter.Lines(n, 100, Letter.Small).Select((line, k) => (k == 0 ? $"{i + 1}" : "", line))).ToList();
        if (notes.Count > 0) blocks.Add(new("Notes", [new(""), new("")], [.. notes.Select(n => (ImmutableArray<string>)[n.Item1, n.line])]));
        return blocks.ToImmutable();
    }

    static void Check(FlatPart part, DrawingOptions wish)
    {
        if (part.Loops.IsDefaultOrEmpty || part.Loops.Any(l => l.IsDefaultOrEmpty)) throw new RefusedException(Refusal.Of("outline", null, "a closed outline of lines and arcs is needed"));
        var places = part.Loops.SelectMany(l => l).SelectMany(s => new[] { s.From, s.To }).Concat(part.Holes.Select(h => h.Centre)).Concat(part.Slots.Select(s => s.Middle));
        foreach (var p in places)
        {
            if (!double.IsFinite(p.X + p.Y)) throw new RefusedException(Refusal.Of("outline", $"({p.X}, {p.Y})", "a place in mm is needed"));
        }
        foreach (var hole in part.Holes)
        {
            if (!(hole.Diameter.Value > 0 && double.IsFinite(hole.Diameter.Value)))
                throw new RefusedException(Refusal.Of($"diameter of hole {hole.Id}", $"{hole.Diameter.Value}", "a positive number of mm is needed"));
        }
        foreach (var slot in part.Slots)
        {
            if (!(slot.Width.Value > 0 && slot.Between.Value >= 0 && double.IsFinite(slot.Width.Value + slot.Between.Value)))
                throw new RefusedException(Refusal.Of($"slot {slot.Id}", $"{slot.Width.Value} × {slot.Between.Value}", "a positive width and length in mm are needed"));
        }
        if (!(Math.Max(part.Bounds.Width, part.Bounds.Height) > 0)) throw new RefusedException(Refusal.Of("outline", "a single point", "an outline with a length and a width is needed"));
        if (wish.Papers.IsDefaultOrEmpty) throw new RefusedException(Refusal.Of("paper", null, "give at least one sheet size"));
    }
}
