using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>
/// The route of a flat or folded part: buy, mark out, cut, drill, fold, weld, check, protect. Holes come before bends, for a
/// flat blank lies firm on the drill table. What the shop cannot do is marked to send out, with the reason.
/// </summary>
public static class BlankRoute
{
    /// <exception cref="RefusedException">A fact of the part or of the shop is out of its range.</exception>
    public static RouteCard Card(BlankFacts facts, Shop shop)
    {
        if ((facts.Wrong ?? shop.Wrong) is { } wrong) throw new RefusedException(wrong);
        var steps = new StepWriter(shop);
        MarkOut(facts, shop, steps);
        Cut(facts, shop, steps);
        Drill(facts, shop, steps);
        Bend(facts, shop, steps);
        Weld(facts, shop, steps);
        steps.Own("Check the first copy against the drawing", "calliper, square", [], (shop.Rates.FirstCopyCheck, facts.Quantity));
        steps.Own("Degrease and prime", "wipe, primer", Cautions.For(Hazard.Painting), (shop.Rates.Protect, facts.Quantity));
        return new(facts.Title, facts.Quantity, [Stock(facts, shop)], steps.Steps, Cautions.For([.. facts.Hazards]));
    }

    static void MarkOut(BlankFacts f, Shop shop, StepWriter steps) =>
        steps.Own("Check the template's 100 mm lines, stick it on, prick the hole centres, scribe outline and bend lines",
            "1:1 template, scriber, centre punch", Cautions.For(Hazard.SharpEdges), (shop.Rates.MarkOut, f.Quantity));

    internal static void Cut(BlankFacts f, Shop shop, StepWriter steps)
    {
        var asMild = Shop.AsMildSteel(f.Thickness, f.Strength);
        var tool = shop.Cutters.Where(c => c.MaxThickness >= asMild).MinBy(c => c.MinutesPerMetre.Value.Likely);
        var metres = f.Quantity * f.CutLength / 1000;
        if (tool is null)
        {
            steps.Outside(OutsideWork.Cutting, "Cut the outline and cut-outs from the DXF",
                $"{f.Thickness:0.##} mm {f.Material} cuts like {asMild:0.##} mm of mild steel; no cutter here takes that.");
            steps.Own("Deburr all edges", "file", Cautions.For(Hazard.SharpEdges), (shop.Rates.DeburrPerMetre, metres));
            return;
        }
        steps.Own("Cut the outline and cut-outs, deburr all edges", $"{tool.Name}, file", Cautions.For(Hazard.Cutting, Hazard.SharpEdges),
            (tool.MinutesPerMetre, metres), (shop.Rates.DeburrPerMetre, metres));
    }

    internal static void Drill(BlankFacts f, Shop shop, StepWriter steps)
    {
        var largest = shop.Drill?.MaxDiameter ?? 0;
        var here = f.Holes.Where(h => h.Diameter <= largest).ToList();
        var tooLarge = f.Holes.Where(h => h.Diameter > largest).ToList();
        if (here.Count > 0)
            steps.Own($"Drill {Sizes(here)}", shop.Drill!.Name, Cautions.For(Hazard.Drilling), (shop.Rates.Hole, (double)f.Quantity * here.Sum(h => h.Count)));
        if (tooLarge.Count > 0)
            steps.Outside(OutsideWork.Drilling, $"Make {Sizes(tooLarge)}, best cut with the outline",
                shop.Drill is null ? "There is no drill here." : $"The {shop.Drill.Name} takes {largest:0.##} mm at most.");
    }

    static string Sizes(List<HoleFacts> holes) => string.Join(", ",
        holes.GroupBy(h => h.Diameter).OrderBy(g => g.Key).Select(g => $"{g.Sum(h => h.Count)} × ⌀{g.Key:0.##}"));

    internal static void Bend(BlankFacts f, Shop shop, StepWriter steps)
    {
        var asMild = Shop.AsMildSteel(f.Thickness, f.Strength);
        bool Folds(BendFacts b) => shop.Folder is { } t && b.Length <= t.Width && asMild <= t.MaxThickness && b.Angle <= t.MaxAngle;
        bool Hammers(BendFacts b) => shop.Vice is { } t && b.Length <= t.JawWidth && asMild <= t.MaxThickness;
        var inFolder = f.Bends.Where(Folds).ToList();
        var inVice = f.Bends.Where(b => !Folds(b) && Hammers(b)).ToList();
        var outside = f.Bends.Where(b => !Folds(b) && !Hammers(b)).ToList();
        if (inFolder.Count > 0)
            steps.Own($"Fold {Count(inFolder.Count, "bend")} {Radii(inFolder)}", shop.Folder!.Name, Cautions.For(Hazard.Folding), (shop.Rates.Fold, (double)f.Quantity * inFolder.Count));
        if (inVice.Count > 0)
            steps.Own($"Hammer over {Count(inVice.Count, "bend")} {Radii(inVice)} on a radiused bar", shop.Vice!.Name, Cautions.For(Hazard.Folding), (shop.Rates.FoldInVice, (double)f.Quantity * inVice.Count));
        if (outside.Count > 0)
            steps.Outside(OutsideWork.Folding, $"Fold {Count(outside.Count, "bend")} {Radii(outside)}", WhyNotFolded(outside[0], f, asMild, shop));
    }

    static string WhyNotFolded(BendFacts bend, BlankFacts f, double asMild, Shop shop) => shop.Folder switch
    {
        null => "There is no folder here, and the vice does not take it.",
        { } t when asMild > t.MaxThickness => $"{f.Thickness:0.##} mm {f.Material} folds like {asMild:0.##} mm of mild steel; the {t.Name} takes {t.MaxThickness:0.##} mm.",
        { } t when bend.Length > t.Width => $"The bend is {bend.Length:0.#} mm long; the {t.Name} is {t.Width:0.#} mm wide.",
        { } t => $"The bend turns {bend.Angle * 180 / Math.PI:0.#}°; the {t.Name} turns {t.MaxAngle * 180 / Math.PI:0.#}° at most.",
    };

    static string Radii(List<BendFacts> bends) =>
        $"(inside radius {string.Join(", ", bends.Select(b => b.Radius).Distinct().Order().Select(r => $"{r:0.##}"))} mm)";

    internal static void Weld(BlankFacts f, Shop shop, StepWriter steps)
    {
        foreach (var seam in f.Welds.GroupBy(w => w.Kind))
        {
            var length = seam.Sum(w => w.Length);
            var kind = seam.Key.Words();
            var title = seam.Key == WeldKind.Braze ? $"Braze {length:0} mm of seam on each" : $"Weld by {kind} {length:0} mm of seam on each";
            if (shop.Welders.Contains(seam.Key))
                steps.Own(title, $"{kind} set", Cautions.For(Hazard.Welding), (shop.Rates.WeldPerMetre, f.Quantity * length / 1000));
            else
                steps.Outside(OutsideWork.Welding, title, $"There is no {kind} set here.");
        }
    }

    static StockToBuy Stock(BlankFacts f, Shop shop)
    {
        var price = shop.Prices.MaterialPerKilogram(f.Material);
        var laying = Laying.Choose(f.Width, f.Height, f.Area, f.Quantity, shop.Stock);
        var area = laying is null ? f.Quantity * f.Width * f.Height : laying.Sheets * laying.Sheet.Area;
        var kilograms = area * f.Thickness * 1e-9 * f.Density;
        var words = laying is null
            ? $"{f.Material} {f.Thickness:0.##} mm, cut to {f.Width:0.#} × {f.Height:0.#} mm, {f.Quantity} off: larger than any sheet on the list"
            : $"{f.Material} sheet {f.Thickness:0.##} mm, {Count(laying.Sheets, "piece")} {laying.Sheet.Name} ({f.Quantity} off, {laying.Waste:0%} waste)";
        return new(words, laying, kilograms, Cost.Of(price.Value * kilograms, shop.Currency), price.Source);
    }

    static string Count(int n, string thing) => n == 1 ? $"1 {thing}" : $"{n} {thing}s";
}
