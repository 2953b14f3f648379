using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>Punch and die of a flanged hole, as turned bodies.</summary>
static class HoleBodies
{
    /// <summary>Greatest distance of a chord from its arc, mm.</summary>
    const double Error = 0.05;

    /// <summary>Ring left round the die's opening, mm (common practice: as much as clamps the sheet flat).</summary>
    const double Rim = 25;

    /// <summary>A straight punch with a pilot that finds the cut hole and a cone that opens it.</summary>
    public static Former Punch(HoleTooling hole)
    {
        var (radius, pilot, height) = (hole.Punch / 2, 0.95 * hole.ByLength / 2, hole.Wanted.Height);
        // Half the opening again as cone keeps the edge from being torn (common practice: about 30° from the axis).
        var cone = (radius - pilot) / Math.Tan(Math.PI / 6);
        return new($"punch {hole.Wanted.Name}", "mild steel or hard wood, turned; polished and greased", Loft.Turned(
            [new(0, 0), new(radius, 0), new(radius, height + Rim), new(pilot, height + Rim + cone), new(pilot, height + 1.5 * Rim + cone), new(0, height + 1.5 * Rim + cone)],
            Arc.Chords(radius, 2 * Math.PI, Error)),
            $"Straight part {hole.Punch:0.0#} mm, pilot {2 * pilot:0.0#} mm. Press it through from the side on which the flange stays smooth.");
    }

    /// <summary>A ring with the flange's radius on its upper edge.</summary>
    public static Former Die(HoleTooling hole)
    {
        var (radius, r, height) = (hole.Die / 2, hole.Wanted.Radius, hole.Wanted.Height + 10);
        var lip = ImmutableArray.CreateBuilder<Vec2>();
        lip.Add(new(radius + r, height));
        // From the top face round into the bore; the section runs anticlockwise, so down the bore last.
        if (r > 0) new Arc(new(radius + r, height - r), r, Math.PI / 2, Math.PI / 2).AddBetween(lip, Error);
        if (r > 0) lip.Add(new(radius, height - r));
        return new($"die {hole.Wanted.Name}", "mild steel plate, bored, or hard wood for one or two", Loft.Turned(
            [new(radius, 0), new(radius + r + Rim, 0), new(radius + r + Rim, height), .. lip], Arc.Chords(radius + r + Rim, 2 * Math.PI, Error)),
            $"Bore {hole.Die:0.0#} mm, upper edge rounded {r:0.0#} mm. Clamp the sheet to it all round.");
    }
}
