using WitnessMark.DrawingOffice.Pieces;

namespace WitnessMark.Cli.Shapes;

/// <summary>A kit in words.</summary>
static class KitWords
{
    public static void Show(Desk desk, Kit kit)
    {
        foreach (var piece in kit.Pieces)
        {
            var points = piece.Outline.Flatten(0.01);
            desk.Out.WriteLine($"{piece.Name}: blank {points.Max(p => p.X) - points.Min(p => p.X):0.0} × {points.Max(p => p.Y) - points.Min(p => p.Y):0.0} mm, {piece.Thickness:0.##} mm thick{(piece.Creases.Length > 0 ? $", {piece.Creases.Length} bends" : "")}{(piece.Count > 1 ? $", {piece.Count} of" : "")}");
        }
        foreach (var former in kit.Formers) desk.Out.WriteLine($"tool {former.Name}: {former.Words}");
        foreach (var seam in kit.Seams)
            desk.Out.WriteLine($"weld {seam.Id}: {seam.Kind.ToString().ToLowerInvariant()}, {seam.Length:0.#} mm, {(seam.Kind == SeamKind.Plug ? $"{seam.Count} holes of {seam.Size:0.##} mm" : $"{seam.Size:0.##} mm deep, gap {seam.RootGap:0.##} mm")}; {seam.Words}");
        foreach (var list in kit.Listings)
        {
            desk.Out.WriteLine($"{list.Title}: {string.Join(" | ", list.Heads)}");
            foreach (var row in list.Rows) desk.Out.WriteLine($"  {string.Join(" | ", row)}");
        }
        foreach (var (step, i) in kit.Steps.Select((s, i) => (s, i))) desk.Out.WriteLine($"{i + 1}. {step}");
        foreach (var caution in kit.Cautions) desk.Out.WriteLine($"! {caution.Words}");
    }
}
