using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>A rail with all that is needed to make it.</summary>
/// <param name="Strains">As if each flange were folded in one piece with the web.</param>
/// <param name="Chosen">For each flange the way that the kit follows.</param>
public sealed record MadeRail(RailForm Form, ImmutableArray<PlacedHole> Holes, ImmutableArray<EdgeStrain> Strains, ImmutableArray<EdgeWays> Ways, ImmutableArray<Way> Chosen, Kit Kit)
{
    /// <param name="elongation">At break, per cent, low end; null where it is not known.</param>
    /// <param name="proposal">1 follows the best way for each flange, 2 the next and so on; a flange with fewer ways takes its last.</param>
    public static Parsed<MadeRail> Of(Rail rail, BendMethod method, double? elongation, int proposal = 1)
    {
        if (proposal < 1) return Refusal.Of("proposal", $"{proposal}", "1 is the best, 2 the next");
        var form = RailForm.Of(rail, method);
        if (!form.Ok) return form.Refusal!;
        var holes = RailHoles.Of(form.Value);
        if (!holes.Ok) return holes.Refusal!;
        var strains = StrainMap.Of(form.Value);
        var ways = WayFinder.Of(form.Value, strains, WorkLimits.Of(elongation));
        ImmutableArray<Way> chosen = [.. ways.Select(w => w.Ways[Math.Min(proposal, w.Ways.Length) - 1])];
        var kit = RailKit.Of(form.Value, method, holes.Value.Holes, ways, chosen, holes.Value.Cautions);
        return kit.Ok ? new MadeRail(form.Value, holes.Value.Holes, strains, ways, chosen, kit.Value) : kit.Refusal!;
    }
}
