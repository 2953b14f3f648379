using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice;

/// <summary>What can hurt someone, in the work or in the part.</summary>
public enum Hazard
{
    SharpEdges, Cutting, Drilling, Folding, Welding, Zinc, OldPaint, Painting, Turning, Tank, Spring, BrakeOrSteering,
    AsbestosLining, HeatTreatment, Electrics, Jacking, Blasting,
}

/// <summary>The usual cautions of the trade. They remind; local codes, the makers' sheets and licensed practice decide.</summary>
public static class Cautions
{
    static readonly ImmutableDictionary<Hazard, string> Texts = new Dictionary<Hazard, string>
    {
        [Hazard.SharpEdges] = "Fresh edges and slivers cut: gloves for carrying, deburr before handling, no gloves near anything that turns.",
        [Hazard.Cutting] = "Eye protection, ears too with powered tools; clamp the work; guard on; sparks and dust away from fuel and rags.",
        [Hazard.Drilling] = "Clamp thin sheet down on wood, never hold it by hand: the drill grabs as it breaks through. Eye protection; no gloves, loose sleeves or long hair.",
        [Hazard.Folding] = "Fingers clear of beam and blade; a long flange swings up fast; try one bend on scrap of the same sheet first.",
        [Hazard.Welding] = "Mask for UV and infrared, skin covered, others screened off; draw the fumes away; move fuel, oil and cloth out, extinguisher at hand, and keep a fire watch for an hour after. Disconnect the battery.",
        [Hazard.Zinc] = "Zinc or cadmium coating gives off poisonous fume when welded, brazed or burnt: strip it back well beyond the heat and use extraction or a suitable respirator.",
        [Hazard.OldPaint] = "Old paint may hold lead: no dry sanding, no torch. Work wet or with chemical stripper, suitable respirator, keep the waste together and hand it in as local rules say.",
        [Hazard.Painting] = "Two-pack paint holds isocyanates: an air-fed mask and proper extraction, or leave it to a licensed sprayer. Any solvent paint: air, and no flame.",
        [Hazard.Turning] = "Eye protection; key out of the chuck; swarf away with a hook, never by hand; no gloves, sleeves or rings.",
        [Hazard.Tank] = "A tank that has held fuel explodes when heated, even after years. No welding, grinding or soldering until it has been cleaned and declared safe by those licensed to do so.",
        [Hazard.Spring] = "A loaded spring stores enough to kill: release it only in a compressor or cage made for it, and stand clear of its line.",
        [Hazard.BrakeOrSteering] = "Brake, steering and suspension parts carry lives: follow the law where the vehicle will run, have a competent person check the design and the finished work, and do not weld or heat a part that was not made for it.",
        [Hazard.AsbestosLining] = "Old brake and clutch linings and gaskets may hold asbestos: keep them wet, never brush, blow, sand or grind them; suitable respirator; bag the dust and hand it in as local rules say.",
        [Hazard.HeatTreatment] = "Hardened or spring steel loses its strength by heat and may crack in the quench: leave hardening and tempering to those who have the furnace and can prove the hardness.",
        [Hazard.Electrics] = "Disconnect the battery first and reconnect it last; fuse what had no fuse; a charging battery gives off hydrogen: air, and no spark. Perished cable burns.",
        [Hazard.Jacking] = "Never under a vehicle on a jack alone: level hard ground, wheels chocked, stands under sound metal (rust hides), and a push to prove it stands before going below.",
        [Hazard.Blasting] = "Blasting throws up silica, lead and rust dust: never sand with free silica, air-fed hood, and thin panels warp. Plug every oilway and bearing; grit left inside wrecks an engine.",
    }.ToImmutableDictionary();

    /// <summary>The texts in the order asked for, each once.</summary>
    public static ImmutableArray<string> For(params ReadOnlySpan<Hazard> hazards)
    {
        var texts = ImmutableArray.CreateBuilder<string>();
        foreach (var h in hazards)
            if (!texts.Contains(Texts[h])) texts.Add(Texts[h]);
        return texts.ToImmutable();
    }
}
