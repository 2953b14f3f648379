using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A skin in one piece with one seam, or in two with the second seam opposite the first.</summary>
public static class Halves
{
    public static ImmutableArray<ImmutableArray<Panel>> Of(Skin skin, SeamChoice choice)
    {
        var angle = SkinSeam.Angle(skin, choice);
        var round = SkinSeam.From(skin, angle);
        if (choice.Pieces == 1) return [round];
        var other = SkinSeam.From(skin, angle + Math.PI)[0];
        var (first, second) = (On(other.FirstFrom, round[0].FirstFrom, skin.First.Count), On(other.SecondFrom, round[0].SecondFrom, skin.Second.Count));
        var (one, two) = (ImmutableArray.CreateBuilder<Panel>(), ImmutableArray.CreateBuilder<Panel>());
        foreach (var p in round)
        {
            if (p.FirstTo <= first + Near && p.SecondTo <= second + Near) one.Add(p);
            else if (p.FirstFrom >= first - Near && p.SecondFrom >= second - Near) two.Add(p);
            else
            {
                var share = p.FirstMoves ? (first - p.FirstFrom) / (p.FirstTo - p.FirstFrom) : (second - p.SecondFrom) / (p.SecondTo - p.SecondFrom);
                var (before, after) = Elements.Cut(skin, p, share);
                one.Add(before);
                two.Add(after);
            }
        }
        return one.Count > 0 && two.Count > 0 ? [one.ToImmutable(), two.ToImmutable()] : [round];
    }

    // Shares of a side: over the rounding of a place that was found, under anything cut.
    const double Near = 1e-7;

    static double On(double place, double from, int n) => place + n * Math.Ceiling((from - Near - place) / n);
}
