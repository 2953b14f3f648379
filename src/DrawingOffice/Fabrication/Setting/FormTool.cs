using System.Globalization;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>A block that sheet is hammered over, located by a pin in one of its holes.</summary>
/// <param name="Radius">Of the nose, corrected for spring-back, mm.</param>
/// <param name="Angle">That the front falls away from the top, over-bend included, radians from flat.</param>
/// <param name="Flange">Down the front, mm.</param>
/// <param name="Length">Of the bend, mm.</param>
/// <param name="Pin">Back from where top and front would meet, and along; null: none.</param>
public sealed record FormTool(string Name, double Radius, double Angle, double Flange, double Length, PinHole? Pin)
{
    const double Back = 60;
    const double PinHeight = 6;

    public Parsed<Kit> ToKit(string fit = Pins.Usual)
    {
        var degrees = Angle * 180 / Math.PI;
        if (!(degrees is >= 5 and <= 150)) return Refusal.Of("angle", $"{degrees:0.###}°", "give 5 to 150° from flat, over-bend included");
        if (!(Radius is > 0 and <= 500)) return Refusal.Of("radius", $"{Radius:0.###} mm", "give the nose radius, more than 0 and at most 500 mm");
        if (!(Length is > 0 and <= 5000)) return Refusal.Of("length", $"{Length:0.###} mm", "give the length of the bend, at most 5000 mm");
        var setback = Radius * Math.Tan(Angle / 2);
        if (!(Flange > setback + 1)) return Refusal.Of("flange", $"{Flange:0.###} mm", $"it must reach past the nose: more than {setback + 1:0.#} mm");
        var down = Vec2.Polar(-Angle);
        var back = Math.Max(Back, setback + Back / 2) + Math.Max(0, -down.X * Flange);
        var foot = down * Flange;
        var profile = Fillet.Round([new(-back, Math.Min(foot.Y, -20)), foot with { Y = Math.Min(foot.Y, -20) }, foot, Vec2.Zero, new(-back, 0)], [0, 0, 0, Radius, 0]);
        // The foot and the point under it are one where the front reaches the bench.
        if (foot.Y <= -20) profile = Fillet.Round([new(-back, foot.Y), foot, Vec2.Zero, new(-back, 0)], [0, 0, Radius, 0]);
        if (!profile.Ok) return profile.Refusal!;
        var top = foot.Y <= -20 ? 3 : 4;
        StandingPin[] pins = [];
        Pin? pin = null;
        if (Pin is { } hole)
        {
            var found = Pins.For(hole.Diameter, fit);
            if (!found.Ok) return found.Refusal!.In($"hole {hole.Name}");
            pin = found.Value;
            if (!(hole.FromApex - hole.Diameter / 2 > setback && hole.FromApex + hole.Diameter / 2 < back)) return Refusal.Of($"hole {hole.Name}, from_apex", $"{hole.FromApex:0.###} mm", $"the pin must stand on the flat top, {setback:0.#} to {back:0.#} mm from the nose");
            if (!(hole.Along - hole.Diameter / 2 > 0 && hole.Along + hole.Diameter / 2 < Length)) return Refusal.Of($"hole {hole.Name}, along", $"{hole.Along:0.###} mm", $"the pin must stand within the length of {Length:0.#} mm");
            pins = [new(top, hole.FromApex - setback, hole.Along, pin.Nominal / 2, PinHeight)];
        }
        var words = string.Create(CultureInfo.InvariantCulture, $"Nose radius {Radius:0.##} mm and front {degrees:0.##}° from flat: both already corrected for spring-back.");
        var former = new Former($"{Name} form tool", "steel; hardwood for a few pieces of thin sheet, edges hard", Prism.Of(profile.Value, Length, pins), words);
        return new Kit(Name, [])
        {
            Shape = former.Shape,
            Formers = [former],
            Steps = [.. pin is null ? Array.Empty<string>() : [pin.Words], "Clamp the blank on the tool under a bar right up to the bend line.", "Bring the flange over along its whole length a little at a time, with a mallet or a block; then dress it down on the front.", "Take it off and hold it to the setting angle; correct the tool by what is wanting."],
            Cautions = [new(CautionKind.Safety, "Clamp tool and bar so that nothing flies; glasses and gloves; a chipped hammer face throws splinters.", [])],
        };
    }
}
