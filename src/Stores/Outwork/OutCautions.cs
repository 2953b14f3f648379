using System.Collections.Immutable;

namespace WitnessMark.Stores.Outwork;

/// <summary>
/// What to say to the firm and what to beware of. Common practice of the trade: the firm, the makers' sheets and local codes
/// decide.
/// </summary>
public static class OutCautions
{
    public static ImmutableArray<string> For(Consignment c)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        if (c.HighTensile && c.Trade is OutTrade.Plating)
            cautions.Add("Hydrogen embrittlement: hardened and high-tensile steel (bolts of 10.9 and up, springs) may crack days after acid pickling and electroplating. Tell the plater the grade; ask for baking straight after plating, or a coating put on without acid. Do not plate brake, steering or suspension fasteners unless the firm takes responsibility in writing.");
        if (c.HighTensile && c.Trade is OutTrade.PowderCoating or OutTrade.Welding)
            cautions.Add("Heat draws the temper of hardened steel: tell the firm which pieces are hardened and ask what they will reach.");
        if (c.OldLinings || c.Trade is OutTrade.Relining)
            cautions.Add("Old linings, clutch plates, gaskets and lagging may hold asbestos. Do not blow, brush, sand or drill them; wet them, bag them twice, label the bag, and let a firm licensed for it take them off. Local rules say how they may travel.");
        cautions.AddRange(OfTrade(c.Trade));
        cautions.Add("Count and photograph every piece before it goes into the box; keep one copy of this list.");
        return cautions.ToImmutable();
    }

    static string[] OfTrade(OutTrade trade) => trade switch
    {
        OutTrade.Plating => ["Plating adds to a size: say which threads, bores and faces stay bare. What was polished away before plating does not come back."],
        OutTrade.Blasting => ["Coarse grit at full pressure buckles thin panels and eats soft metal: say sheet gauge and grit. Plug bearings, bores, oilways and threads, and see that no grit is left in them. Old paint may hold lead: tell the firm."],
        OutTrade.PowderCoating => ["Powder is baked at about 200 °C: take out rubber, bushes, soldered joints and filler first. Mask threads, bores, seats and earth points."],
        OutTrade.Painting => ["Mask threads, bores, machined faces and earth points; give the colour by its code and a sample."],
        OutTrade.Relining => ["Brakes carry lives: have the finished work checked by a competent person, and bed the linings in as their maker says."],
        OutTrade.Welding => ["A tank that held fuel explodes when heated: only those licensed for it may clean and heat one. Say which metal it is; look for plating that gives poisonous fume."],
        OutTrade.Casting => ["Say the alloy and the shrinkage allowed for; the pattern goes back with the castings."],
        OutTrade.Looms => ["Send the old loom with its labels on; give current ratings and lengths; ask for a diagram back."],
        OutTrade.Glass => ["Glazing is marked by law in many places: ask for the mark that the law wants where the vehicle will run."],
        _ => [],
    };
}
