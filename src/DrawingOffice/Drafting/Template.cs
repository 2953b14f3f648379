using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>The part at its true size, for the cutter's DXF and for a paper template that is cut into tiles: outline, holes, fold lines and hole letters, no dimensions.</summary>
public static class Template
{
    // Clear paper round the part, mm.
    const double Round = 10;

    /// <summary>Layers keep outline, holes, bend lines, centre lines and lettering apart.</summary>
    /// <exception cref="RefusedException">The part is empty or not finite.</exception>
    public static PrintRoom.Sheet Draw(FlatPart part, string title)
    {
        Acceptance.Check(part);
        var board = new Board();
        PartShape.Draw(board, part, 1);
        var holes = Hole.Lettered(part);
        foreach (var hole in holes.Count <= PartView.MostLettered ? holes : []) Leader.Beside(board, hole.Middle, hole.Size.Value / 2, new(hole.Letter));
        foreach (var fold in part.Folds)
            Leader.Beside(board, (fold.From + fold.To) / 2, 0, new($"{(fold.Angle >= 0 ? "up" : "down")} {Writing.Angle(Math.Abs(fold.Angle))}"));
        var bounds = board.Clear.Bounds.Grown(Round);
        var moved = new Board();
        // Leaders and letters belong to the lettering, so that a cutter can leave them out.
        moved.AddMoved(board.Marks.Select(m => m.Layer == Layers.Dimensions ? m with { Layer = Layers.Text } : m), new Vec2(-bounds.Left, -bounds.Bottom));
        return new(title, bounds.Width, bounds.Height, moved.Marks);
    }
}
