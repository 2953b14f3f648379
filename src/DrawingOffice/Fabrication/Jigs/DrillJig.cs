using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>A plate with drill bushes for a group of holes, pinned to holes that are there; turned over it drills the other hand.</summary>
public static class DrillJig
{
    // Bore up to, outside, mm: headless press-fit bushes as DIN 179 has them (from memory; measure the bush in hand).
    static readonly ImmutableArray<(double Bore, double Outside)> Bushes =
        [(1, 3), (1.8, 4), (2.6, 5), (3.3, 6), (4, 7), (5, 8), (6, 10), (8, 12), (10, 15), (12, 18), (15, 22), (18, 26), (22, 30), (26, 35), (30, 42)];

    /// <summary>Metal left between bushes and round the rim, mm (common practice).</summary>
    const double Wall = 3;
    const double Rim = 8;

    /// <summary>The bush for a hole: as long as twice the drill, at least 6 mm (common practice).</summary>
    public static Parsed<Bush> BushFor(JigHole hole)
    {
        if (!(hole.Diameter > 0)) return Refusal.Of($"hole {hole.Name}, diameter", $"{hole.Diameter}", "give more than 0 mm");
        foreach (var (bore, outside) in Bushes)
            if (hole.Diameter <= bore) return new Bush(hole.Name, hole.At, hole.Diameter, outside, Math.Max(6, Math.Ceiling(2 * hole.Diameter)));
        return Refusal.Of($"hole {hole.Name}, diameter", $"{hole.Diameter} mm", "bushes are listed up to 30 mm; pilot the hole and open it with a cutter");
    }

    /// <param name="bothHands">The same plate is cut turned over as well.</param>
    /// <param name="fit">Of the pins in the holes that are there.</param>
    public static Parsed<Kit> Of(string title, ImmutableArray<JigHole> holes, bool bothHands, string fit = Pins.Usual)
    {
        var pins = Locating(holes);
        var drilled = holes.Where(h => !h.Locates).ToList();
        if (drilled.Count == 0) return Refusal.Of("holes", $"{holes.Length}", "give at least one hole to be drilled; those that locate are there already");
        var (bushes, openings, listed) = (new List<Bush>(), ImmutableArray.CreateBuilder<Opening>(), ImmutableArray.CreateBuilder<ImmutableArray<string>>());
        foreach (var hole in drilled)
        {
            var bush = BushFor(hole);
            if (!bush.Ok) return bush.Refusal!;
            bushes.Add(bush.Value);
            openings.Add(new RoundHole(hole.Name, hole.At, bush.Value.Outside));
            listed.Add([hole.Name, $"bush {N(bush.Value.Bore)} × {N(bush.Value.Outside)} × {N(bush.Value.Length)} mm", "bore the plate H7, press the bush in (n6)"]);
        }
        for (var i = 0; i < pins.Count; i++)
        {
            var pin = Pins.For(pins[i].Diameter, fit);
            if (!pin.Ok) return pin.Refusal!.In($"hole {pins[i].Name}");
            openings.Add(new RoundHole(pins[i].Name, pins[i].At, pin.Value.Nominal));
            listed.Add([pins[i].Name, i == 0 ? "round pin" : "pin flatted towards the first, so that it guides one way only", pin.Value.Words]);
        }
        if (Crowded(openings) is { } two) return Refusal.Of("holes", $"{two.A} and {two.B}", $"their bushes or pins leave less than {Wall} mm between; make two plates, or drill one through the other's bush later");
        var thickness = Math.Max(8, bushes.Max(b => b.Length));
        var plate = new Piece($"{title} drill plate", thickness, Outline(openings)) { Openings = openings.ToImmutable(), Handed = bothHands, Notes = [.. listed.Select(l => string.Join(": ", l))] };
        return new Kit(title, [plate])
        {
            Steps = ["Bore plate and pin holes at one setting, from the same zero.", "Press the bushes in, their ends a drill's width above the part so that chips get out, or flush for a sheet that is held flat.", "Clamp the plate on its pins; drill; deburr both sides."],
            Listings = [new("Bushes and pins", ["hole", "what", "how"], listed.ToImmutable())],
            Cautions = [.. Cautions(pins.Count)],
        };
    }

    /// <summary>The two that lie farthest apart: what is between them is held best.</summary>
    static List<JigHole> Locating(ImmutableArray<JigHole> holes)
    {
        var there = holes.Where(h => h.Locates).ToList();
        if (there.Count <= 2) return there;
        var pairs = from a in there from b in there where !ReferenceEquals(a, b) select (a, b);
        var (first, second) = pairs.MaxBy(p => p.a.At.DistanceTo(p.b.At));
        return [first, second];
    }

    static IEnumerable<Caution> Cautions(int pins)
    {
        if (pins == 0) yield return new(CautionKind.OutsideRange, "No hole of the part locates the plate: set it by an edge stop or scribed lines, and clamp it.", []);
        if (pins == 1) yield return new(CautionKind.OutsideRange, "One pin lets the plate turn: add a stop along an edge, or a second hole.", []);
        yield return new(CautionKind.Safety, "Clamp the part: thin sheet climbs the drill and spins. Glasses; no gloves at a turning drill.", []);
    }

    static (string A, string B)? Crowded(ImmutableArray<Opening>.Builder openings)
    {
        var round = openings.Cast<RoundHole>().ToList();
        for (var i = 0; i < round.Count; i++)
            for (var k = 0; k < i; k++)
                if (round[i].At.DistanceTo(round[k].At) < (round[i].Diameter + round[k].Diameter) / 2 + Wall) return (round[k].Id, round[i].Id);
        return null;
    }

    static Loop Outline(ImmutableArray<Opening>.Builder openings)
    {
        var round = openings.Cast<RoundHole>().ToList();
        double Low(Func<Vec2, double> of) => round.Min(h => of(h.At) - h.Diameter / 2) - Rim;
        double High(Func<Vec2, double> of) => round.Max(h => of(h.At) + h.Diameter / 2) + Rim;
        var (x, y) = (Low(p => p.X), Low(p => p.Y));
        return Loop.Rectangle(High(p => p.X) - x, High(p => p.Y) - y).Moved(Pose2.Shift(new(x, y)));
    }

    static string N(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture);
}
