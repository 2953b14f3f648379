using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>Where a skin is opened along an element, so that it can be laid flat.</summary>
public static class SkinSeam
{
    /// <summary>Angle round the first end at which the choice puts the seam, radians.</summary>
    public static double Angle(Skin skin, SeamChoice choice)
    {
        var panel = choice.Place switch
        {
            SeamPlace.Flat => skin.Panels.Cast<Panel?>().FirstOrDefault(p => p!.Value.Flat),
            SeamPlace.Corner => Corner(skin),
            _ => null,
        };
        return panel is { } p ? skin.First.Angle(skin.First.At((p.FirstFrom + p.FirstTo) / 2)) : choice.Angle;
    }

    // The fan about the first sharp corner of the first end, or else of the second.
    static Panel? Corner(Skin skin)
    {
        foreach (var p in skin.Panels)
            if (!p.FirstMoves && Whole(p.FirstFrom) && skin.First.Sharp(skin.First.Split(p.FirstFrom).Side)) return p;
        foreach (var p in skin.Panels)
            if (!p.SecondMoves && Whole(p.SecondFrom) && skin.Second.Sharp(skin.Second.Split(p.SecondFrom).Side)) return p;
        return null;
    }

    static bool Whole(double place) => place == Math.Floor(place);

    /// <summary>The panels once round from the element at an angle round the first end; about a corner, from the middle of its fan.</summary>
    public static ImmutableArray<Panel> From(Skin skin, double angle)
    {
        var n = skin.First.Count;
        var place = skin.First.PlaceAt(angle);
        var panels = skin.Panels;
        // Within a panel whose first edge moves past the place.
        for (var i = 0; i < panels.Length; i++)
        {
            var p = panels[i];
            var here = place + n * Math.Ceiling((p.FirstFrom - place) / n);
            if (p.FirstMoves && here > p.FirstFrom + Near && here < p.FirstTo - Near)
                return Turned(skin, i, (here - p.FirstFrom) / (p.FirstTo - p.FirstFrom));
        }
        // At a corner: halfway through what turns about it.
        var fan = Enumerable.Range(0, panels.Length).Where(i => !panels[i].FirstMoves && At(panels[i].FirstFrom, place, n)).ToList();
        if (fan.Count > 0)
        {
            // A fan that runs over the end of the list begins in its last part.
            var start = fan.FindIndex(i => !fan.Contains((i + panels.Length - 1) % panels.Length));
            var ordered = Enumerable.Range(0, fan.Count).Select(k => fan[(Math.Max(start, 0) + k) % fan.Count]).ToList();
            return Turned(skin, ordered[(ordered.Count - 1) / 2], ordered.Count % 2 == 1 ? 0.5 : 1);
        }
        var at = Enumerable.Range(0, panels.Length).FirstOrDefault(i => At(panels[i].FirstFrom, place, n));
        return Turned(skin, at, 0);
    }

    const double Near = 1e-9;

    static bool At(double p, double place, int n) => Math.Abs(Math.IEEERemainder(p - place, n)) <= Near;

    static ImmutableArray<Panel> Turned(Skin skin, int index, double share)
    {
        var panels = skin.Panels;
        if (share >= 1) (index, share) = ((index + 1) % panels.Length, 0);
        var turned = ImmutableArray.CreateBuilder<Panel>();
        var (before, after) = share > 0 ? Elements.Cut(skin, panels[index], share) : (default, panels[index]);
        turned.Add(after);
        for (var k = 1; k < panels.Length; k++)
            turned.Add(index + k < panels.Length ? panels[index + k] : panels[index + k - panels.Length].On(skin.First.Count, skin.Second.Count));
        if (share > 0) turned.Add(before.On(skin.First.Count, skin.Second.Count));
        return turned.ToImmutable();
    }
}
