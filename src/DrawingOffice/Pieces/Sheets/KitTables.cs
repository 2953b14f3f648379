using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Pieces.Sheets;

/// <summary>What a kit holds, as small tables in plain words and mm, the same on paper, on the screen and in a file.</summary>
public static class KitTables
{
    /// <summary>Those that hold anything: pieces, formers, bends, welds, then the kit's own.</summary>
    public static ImmutableArray<Listing> All(Kit kit) =>
        [.. new[] { Pieces(kit), Formers(kit), Bends(kit), Welds(kit) }.Where(l => l.Rows.Length > 0), .. kit.Listings];

    public static Listing Pieces(Kit kit) => new("Pieces", ["piece", "off", "thickness", "over all", "area of one"],
        [.. kit.Pieces.Select(p =>
        {
            var (width, height) = Size(p);
            return Row(p.Name, p.Handed ? $"{p.Quantity} of each hand" : $"{p.Quantity}", p.Paper ? "paper" : Mm(p.Thickness), $"{Figure(width, 1)} × {Figure(height, 1)} mm", $"{Figure(p.Area / 100, 0)} cm²");
        })]);

    public static Listing Formers(Kit kit) => new("Make first", ["former or tool", "of", "how it is used"],
        [.. kit.Formers.Select(f => Row(f.Name, f.Material, f.Words))]);

    public static Listing Bends(Kit kit) => new("Bends", ["piece", "bend", "angle", "inside radius", "length"],
        [.. kit.Pieces.SelectMany(p => p.Creases.Select(c => Row(p.Name, c.Id, Turned(c.Angle), Mm(c.InsideRadius), Mm(Length(c.Line)))))]);

    public static Listing Welds(Kit kit) => new("Welds", ["weld", "joins", "kind", "size", "gap", "length", "how"],
        [.. kit.Seams.Select(s => Row(s.Id, s.Between, Kind(s), Size(s), Mm(s.RootGap), Mm(s.Length), s.Words))]);

    static ImmutableArray<string> Row(params ReadOnlySpan<string> cells) => [.. cells];

    static string Turned(double angle) => $"{Figure(Math.Abs(angle) * 180 / Math.PI, 1)}° {(angle > 0 ? "up" : "down")}";

    static string Kind(Seam seam) => seam.Kind switch
    {
        SeamKind.Plug => $"{seam.Count} plug {(seam.Count == 1 ? "weld" : "welds")}",
        var kind => $"{kind.ToString().ToLowerInvariant()} weld",
    };

    static string Size(Seam seam) => seam.Kind switch
    {
        SeamKind.Plug => $"hole {Mm(seam.Size)}",
        SeamKind.Fillet => $"leg {Mm(seam.Size)}",
        _ => $"throat {Mm(seam.Size)}",
    };

    /// <summary>Width and height of the rectangle round a piece as it is drawn, mm.</summary>
    public static (double Width, double Height) Size(Piece piece)
    {
        var points = piece.Outline.Flatten(0.01);
        return (points.Max(p => p.X) - points.Min(p => p.X), points.Max(p => p.Y) - points.Min(p => p.Y));
    }

    public static double Length(ImmutableArray<Vec2> line) => line.Zip(line.Skip(1)).Sum(s => s.First.DistanceTo(s.Second));

    static string Mm(double value) => $"{Figure(value, 2)} mm";

    static string Figure(double value, int decimals) => Math.Round(value, decimals).ToString("0.##", CultureInfo.InvariantCulture);
}
