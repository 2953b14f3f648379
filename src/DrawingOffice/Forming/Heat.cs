using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Forming;

/// <summary>What to know before a flame is brought to the sheet. Common practice, and no substitute for the rules of the place and the maker.</summary>
public static class Heat
{
    public static ImmutableArray<Caution> Cautions(Material material) =>
    [
        new(CautionKind.Strength, material.Family switch
        {
            "aluminium" => "Aluminium shows no colour before it melts: rub it with soap and stop when the soap turns brown. Hardened and heat-treated sheet goes soft for good where it was hot.",
            "spring steel" => "Never heat a spring to bend it: it loses its temper and breaks later. Have it made or set cold by a spring maker.",
            "cast iron" => "Cast iron does not bend; heat cracks it.",
            "steel" => "Bend mild steel at red heat in one go and not in the blue heat below it, where it is brittle. High-strength sheet loses its strength when heated: leave it cold.",
            _ => "Copper and brass are softened by heating and quenching, and then bent cold.",
        }, []),
        new(CautionKind.Strength, "A structural part is not heated to form it unless its maker and the local rules allow it.", []),
        new(CautionKind.Safety, "Heat: no tank, pipe, paint, underseal, sound-proofing or tyre near; zinc and old paint give off poisonous fumes, so grind them off and air the place; extinguisher at hand and look again for smouldering an hour after.", []),
    ];
}
