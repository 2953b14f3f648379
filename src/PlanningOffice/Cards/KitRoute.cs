using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>
/// The route of a shape made of several pieces: formers first, then all pieces marked out, cut, drilled, folded and hammered, then tacked, checked
/// and welded. What the shop cannot do is marked to send out, with the reason.
/// </summary>
public static class KitRoute
{
    /// <exception cref="RefusedException">A fact of the kit or of the shop is out of its range.</exception>
    public static RouteCard Card(KitFacts facts, Shop shop)
    {
        if ((facts.Wrong ?? shop.Wrong) is { } wrong) throw new RefusedException(wrong);
        var steps = new StepWriter(shop);
        var pieces = facts.Sheets.Sum(s => s.Pieces);
        if (facts.Formers.Length > 0)
            steps.Own($"Make first: {string.Join(", ", facts.Formers)}", "saw, rasp, file, square", Cautions.For(Hazard.Cutting), (shop.Rates.Former, facts.Formers.Length));
        if (pieces > 0)
            steps.Own("Check the templates' 100 mm lines, stick them on, prick the hole centres, scribe outlines, bends and witness lines; write each piece's name on it",
                "1:1 templates, scriber, centre punch", Cautions.For(Hazard.SharpEdges), (shop.Rates.MarkOut, pieces));
        if (facts.Papers > 0)
            steps.Own($"Wrap or lay {(facts.Papers == 1 ? "the paper template" : $"the {facts.Papers} paper templates")} on, mark round, cut outside the line and file until it sits close",
                "templates, saw, half-round file", Cautions.For(Hazard.Cutting, Hazard.SharpEdges), (shop.Rates.MarkOut, facts.Papers), (shop.Rates.FoldInVice, facts.Papers));
        foreach (var sheet in facts.Sheets) Shape(sheet, facts, shop, steps);
        Form(facts, shop, steps);
        Join(facts, shop, steps);
        steps.Own("Check the first copy against the drawing", "calliper, square, protractor", [], (shop.Rates.FirstCopyCheck, facts.Quantity));
        steps.Own("Degrease and prime", "wipe, primer", Cautions.For(Hazard.Painting), (shop.Rates.Protect, facts.Quantity));
        return new(facts.Title, facts.Quantity, [.. facts.Stock.Select(s => Stock(s, facts, shop))], steps.Steps, Cautions.For([.. facts.Hazards]));
    }

    /// <summary>Pieces of one thickness, as if they were one blank.</summary>
    static void Shape(SheetFacts sheet, KitFacts facts, Shop shop, StepWriter steps)
    {
        var all = new BlankFacts($"{sheet.Thickness:0.##} mm pieces", facts.Material, sheet.Thickness, facts.Density, facts.Strength,
            1, 1, 1, sheet.CutLength, sheet.Bends, sheet.Holes, [], 1, []);
        BlankRoute.Cut(all, shop, steps);
        BlankRoute.Drill(all, shop, steps);
        BlankRoute.Bend(all, shop, steps);
        if (sheet.Hammered > 0)
            steps.Own($"Shape {sheet.Hammered:0} mm of curved bend and edge over {(facts.Formers.IsEmpty ? "a bar or stake" : "the former")}, a little at each pass, checking against the template", "former, mallet, dolly",
                Cautions.For(Hazard.Folding, Hazard.SharpEdges), (shop.Rates.HammerPerMetre, sheet.Hammered / 1000));
    }

    static void Form(KitFacts f, Shop shop, StepWriter steps)
    {
        if (f.Formed == 0) return;
        var (words, tool) = f.Formers.IsEmpty
            ? ("Roll or bend along the scribed elements, a little at a time, checking against the ends", "rolls, or a bar in the vice; keep gloves away from rolls")
            : ("Form over the tools made first, in the order on the kit's sheet, a little at each pass; try one on scrap of the same sheet", "tools made first, mallet or press");
        steps.Own(words, tool, Cautions.For(Hazard.Folding, Hazard.SharpEdges), (shop.Rates.Form, f.Formed));
    }

    static void Join(KitFacts f, Shop shop, StepWriter steps)
    {
        if (f.Seams <= 0 && f.Plugs == 0) return;
        steps.Own("Take paint and zinc off 25 mm back from every joint, degrease with a solvent that holds no chlorine; weld-through primer on faces that close on each other; open drains and vents of closed sections",
            "scraper, wire wheel, weld-through primer", Cautions.For(Hazard.Zinc, Hazard.OldPaint), (shop.Rates.DeburrPerMetre, (f.Seams + 50.0 * f.Plugs) / 1000));
        ImmutableArray<string> hot = Cautions.For(Hazard.Welding, Hazard.Zinc, Hazard.Tank);
        var words = string.Join(" and ", new[] { f.Seams > 0 ? $"{f.Seams:0} mm of seam" : "", f.Plugs > 0 ? $"{f.Plugs} plug welds" : "" }.Where(w => w.Length > 0));
        WeldKind[] likely = [WeldKind.Mig, WeldKind.Tig, WeldKind.Gas, WeldKind.Arc];
        if (likely.Where(k => shop.Welders.Contains(k)).Cast<WeldKind?>().FirstOrDefault() is not { } kind)
        {
            steps.Outside(OutsideWork.Welding, $"Tack and weld {words} as listed", "There is no welding set here that takes sheet.");
            return;
        }
        steps.Own("Clamp the pieces true, on the setting tools where there are any; tack in the order listed, check every angle before welding on", $"{kind.Words()} set, clamps", hot, (shop.Rates.MarkOut, f.Quantity));
        steps.Own($"Weld {words} as listed, a short run at a time in turn; then watch for fire for an hour", $"{kind.Words()} set, grinder", hot,
            (shop.Rates.WeldPerMetre, f.Seams / 1000), (shop.Rates.PlugWeld, f.Plugs));
    }

    static StockToBuy Stock(SheetToBuy sheet, KitFacts f, Shop shop)
    {
        var price = shop.Prices.MaterialPerKilogram(f.Material);
        var kilograms = sheet.Area * sheet.Thickness * 1e-9 * f.Density;
        return new(sheet.Words, sheet.Laying, kilograms, Cost.Of(price.Value * kilograms, shop.Currency), price.Source);
    }
}
