using System.Globalization;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Pieces.Nesting;
using WitnessMark.DrawingOffice.Pieces.Sheets;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.CardJob;
using WitnessMark.PlanningOffice;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>The job card of a kit: hours, stock and cautions from its pieces, bends, welds and formers.</summary>
public static class KitCard
{
    /// <exception cref="Maths.RefusedException">A fact of the kit or the shop is out of its range.</exception>
    public static RouteCard Of(KitRequest request, NestPlan nest)
    {
        var (kit, material, n) = (request.Kit, request.Material, request.Quantity);
        return KitRoute.Card(new(
            kit.Title, material.Name, material.Density, material.Ultimate.High ?? material.Ultimate.Low ?? 0,
            [.. kit.Pieces.Where(p => !p.Paper).GroupBy(p => p.Thickness).OrderBy(g => g.Key).Select(g => Sheet(g.Key, g, n))],
            [.. kit.Formers.Select(f => f.Name)],
            n * kit.Seams.Where(s => s.Kind != SeamKind.Plug).Sum(s => s.Length * s.Count), n * kit.Seams.Where(s => s.Kind == SeamKind.Plug).Sum(s => s.Count),
            [.. Stock(nest, material.Name), .. nest.TooLarge.Select(name => OffTheList(kit, name, material.Name, n))],
            n, request.Hazards)
        {
            Papers = n * kit.Pieces.Where(p => p.Paper).Sum(p => p.Count),
            Formed = n * Formed(kit),
        }, request.Shop);
    }

    /// <summary>A kit with no straight or hammered bend gets its shape otherwise: over its tools, or along its elements.</summary>
    static int Formed(Kit kit)
    {
        var sheet = kit.Pieces.Where(p => !p.Paper).ToList();
        return kit.Formers.IsEmpty && kit.Shape is null || sheet.Any(p => p.Creases.Any(c => c.Width > 0)) ? 0 : sheet.Sum(p => p.Count);
    }

    static SheetFacts Sheet(double thickness, IEnumerable<Piece> pieces, int times)
    {
        var all = pieces.Select(p => (Piece: p, Count: p.Count * times)).ToList();
        IEnumerable<(Crease Crease, int Count)> creases = all.SelectMany(p => p.Piece.Creases.Select(c => (c, p.Count)));
        var folded = creases.Where(c => Straight(c.Crease)).ToList();
        return new(thickness, all.Sum(p => p.Count), all.Sum(p => p.Count * FlatFigures.Of(PiecePart.Of(p.Piece)).CutLength),
            [.. folded.SelectMany(c => Enumerable.Repeat(new BendFacts(Math.Max(KitTables.Length(c.Crease.Line), 0.1), c.Crease.InsideRadius, Math.Max(Math.Abs(c.Crease.Angle), 1e-6)), c.Count))],
            [.. all.SelectMany(p => p.Piece.Openings.OfType<RoundHole>().Select(h => (h.Diameter, p.Count))).GroupBy(h => Math.Round(h.Diameter, 2)).Select(g => new HoleFacts(g.Key, g.Sum(h => h.Count)))],
            creases.Where(c => !Straight(c.Crease)).Sum(c => c.Count * KitTables.Length(c.Crease.Line)));
    }

    /// <summary>A folder does straight bends that take up sheet; the rest is hammered or rolled.</summary>
    static bool Straight(Crease crease) => crease is { Line.Length: 2, Width: > 0 };

    static IEnumerable<SheetToBuy> Stock(NestPlan nest, string material)
    {
        foreach (var (thickness, size, count) in nest.ToBuy)
        {
            var sheets = nest.Sheets.Where(s => s.Thickness == thickness && s.Size == size).ToList();
            var area = sheets.Sum(s => s.Pieces.Sum(p => p.Piece.Outline.Area));
            var waste = 1 - area / (count * size.Area);
            var words = string.Create(CultureInfo.InvariantCulture,
                $"{material} sheet {thickness:0.##} mm, {count} {(count == 1 ? "piece" : "pieces")} {size.Name} ({Blanks(sheets.Sum(s => s.Pieces.Length))}, {waste:0%} waste)");
            var across = new StockSheet(size.Name, Math.Max(size.Width, size.Height), Math.Min(size.Width, size.Height));
            yield return new(words, thickness, count * size.Area, new(across, count, [.. sheets[0].Pieces.Select(Rectangle)], waste));
        }
    }

    static string Blanks(int n) => n == 1 ? "1 blank" : string.Create(CultureInfo.InvariantCulture, $"{n} blanks");

    static LaidPiece Rectangle(Laid laid)
    {
        var points = laid.Piece.Outline.Moved(laid.Pose).Flatten(0.1);
        var (x, y) = (points.Min(p => p.X), points.Min(p => p.Y));
        return new(x, y, points.Max(p => p.X) - x, points.Max(p => p.Y) - y);
    }

    static SheetToBuy OffTheList(Kit kit, string name, string material, int times)
    {
        var piece = kit.Pieces.First(p => p.Name == name);
        var (width, height) = KitTables.Size(piece);
        return new(string.Create(CultureInfo.InvariantCulture, $"{material} {piece.Thickness:0.##} mm for {name}, {width:0} × {height:0} mm, {piece.Count * times} off: larger than any sheet on the list"),
            piece.Thickness, width * height * piece.Count * times, null);
    }
}
