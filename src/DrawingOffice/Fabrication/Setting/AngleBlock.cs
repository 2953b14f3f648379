using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// The tool that two sheets are clamped to while they are tacked: it fills the angle from inside, is hollowed at the apex for bead and bend, and
/// carries a pin for a hole of the part. As a block (printed, milled or hardwood), and built up of two gauge plates and a seat.
/// </summary>
public static class AngleBlock
{
    const double GaugePlate = 3;
    const double PinHeight = 6;

    public static Parsed<Kit> Of(AngleTool tool, string fit = Pins.Usual)
    {
        if (Wrong(tool) is { } wrong) return wrong;
        Pin? pin = null;
        if (tool.Hole is { } hole)
        {
            var found = Pins.For(hole.Diameter, fit);
            if (!found.Ok) return found.Refusal!.In($"hole {hole.Name}");
            pin = found.Value;
        }
        var profile = Profile(tool);
        var words = Words(tool, pin);
        StandingPin[] pins = tool.Hole is { } h && pin is not null ? [new(0, h.FromApex - tool.ApexRelief, h.Along, pin.Nominal / 2, PinHeight)] : [];
        var former = new Former($"{tool.Name} block", "steel, aluminium or hardwood; a print serves for tacking if it is kept cool", Prism.Of(profile, tool.Width, pins), words) { Templates = Plates(tool, profile, pin) };
        var deg = Deg(tool.Angle);
        return new Kit(tool.Name, [])
        {
            Shape = former.Shape,
            Formers = [former],
            Steps =
            [
                "Cut the block, or the two gauge plates and the seat; file the gauge edges together as a pair.",
                $"Check {deg}° with slips on a sine bar or a protractor before use.",
                .. pin is null ? Array.Empty<string>() : [pin.Words],
                "Clamp both sheets to the tool, tack at the ends, take the tool out, look at the angle, tack the middle.",
            ],
            Listings = [new("Setting", ["what", "figure"], [["angle between the faces", $"{deg}° ± {Deg(2 * tool.Std)}°"], ["hollow at the apex", $"{tool.ApexRelief.ToString("0.#", CultureInfo.InvariantCulture)} mm radius"]])],
            Cautions = [new(CautionKind.Weld, "Weld away from the tool; heat and spatter spoil its edges, and a weld pulls the angle closed by a degree or more: set it open by what a trial piece shows.", [])],
        };
    }

    /// <summary>Apex at the origin, first leg along x, second leg at the angle; hollow round the apex.</summary>
    internal static Loop Profile(AngleTool tool)
    {
        var (r, leg, angle) = (tool.ApexRelief, tool.Leg, tool.Angle);
        var second = Vec2.Polar(angle);
        var corners = new List<Corner> { new(new(r, 0)), new(new(leg, 0)) };
        // A wide angle leaves no metal between the chord and the hollow: it is backed out along the middle.
        var backed = r + Backing;
        if (leg * Math.Cos(angle / 2) < backed) corners.Add(new(Vec2.Polar(angle / 2, backed)));
        corners.Add(new(second * leg));
        corners.Add(new(second * r, -Math.Tan(angle / 4)));
        return new([.. corners]);
    }

    const double Backing = 15;

    static ImmutableArray<Piece> Plates(AngleTool tool, Loop profile, Pin? pin)
    {
        var seat = new Piece($"{tool.Name} seat", GaugePlate, Loop.Rectangle(tool.Leg - tool.ApexRelief, tool.Width))
        {
            Openings = tool.Hole is { } h && pin is not null ? [new RoundHole($"pin for {h.Name}", new(h.FromApex - tool.ApexRelief, h.Along), pin.Nominal)] : [],
            Notes = [.. pin is null ? Array.Empty<string>() : [pin.Words], $"Lies flush with the first edges of the gauge plates, which stand {(tool.Width - GaugePlate).ToString("0.#", CultureInfo.InvariantCulture)} mm apart over middles."],
        };
        var plate = new Piece($"{tool.Name} gauge plate", GaugePlate, profile) { Quantity = 2, Notes = [$"Angle {Deg(tool.Angle)}°; file both as a pair."] };
        return [plate, seat];
    }

    static string Words(AngleTool tool, Pin? pin) =>
        $"Holds {Deg(tool.Angle)}° ± {Deg(2 * tool.Std)}° between the inner faces.{(pin is null ? "" : $" Its pin enters hole {tool.Hole!.Name}.")}";

    static string Deg(double angle) => (angle * 180 / Math.PI).ToString("0.00", CultureInfo.InvariantCulture);

    static Refusal? Wrong(AngleTool t)
    {
        var degrees = t.Angle * 180 / Math.PI;
        if (!(degrees is >= 10 and <= 175)) return Refusal.Of("angle", $"{degrees:0.###}°", "give 10 to 175° between the faces");
        if (!(t.ApexRelief is >= 0.5 and <= 100)) return Refusal.Of("relief", $"{t.ApexRelief:0.###} mm", "give 0.5 to 100 mm");
        if (!(t.Leg >= t.ApexRelief + 10 && t.Leg <= 1000)) return Refusal.Of("leg", $"{t.Leg:0.###} mm", $"give {t.ApexRelief + 10:0.#} to 1000 mm, so that an edge is left beyond the relief");
        if (!(t.Width is >= 2 * GaugePlate and <= 1000)) return Refusal.Of("width", $"{t.Width:0.###} mm", $"give {2 * GaugePlate} to 1000 mm");
        if (t.Hole is not { } h) return null;
        if (!(h.FromApex - h.Diameter / 2 > t.ApexRelief && h.FromApex + h.Diameter / 2 < t.Leg)) return Refusal.Of($"hole {h.Name}, from_apex", $"{h.FromApex:0.###} mm", $"the pin must stand on the edge left, {t.ApexRelief:0.#} to {t.Leg:0.#} mm from the apex");
        return h.Along - h.Diameter / 2 > 0 && h.Along + h.Diameter / 2 < t.Width ? null : Refusal.Of($"hole {h.Name}, along", $"{h.Along:0.###} mm", $"the pin must stand within the tool's width of {t.Width:0.#} mm");
    }
}
