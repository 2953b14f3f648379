using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>How much flat sheet a plug weld finds at its join.</summary>
static class PlugRoom
{
    /// <summary>Sides whose directions agree to this cosine run on as one, and sheets lie flat on each other (about 2½°).</summary>
    const double Parallel = 0.999;

    /// <summary>Width over which both strips lie flat on each other at a join, mm; of the narrower flat where they meet at an angle.</summary>
    public static double Of(Profile profile, Cut a, Cut b)
    {
        var (first, second) = (Flat(profile, a), Flat(profile, b));
        var along = Along(profile, a).Dot(Along(profile, b));
        if (Math.Abs(along) < Parallel) return Math.Min(first.Back + first.Ahead, second.Back + second.Ahead);
        if (along < 0) second = (second.Ahead, second.Back);
        return Math.Min(first.Back, second.Back) + Math.Min(first.Ahead, second.Ahead);
    }

    static Vec2 Along(Profile profile, Cut cut) => profile.Strips[cut.Strip].Middle[cut.Side].StartsAlong;

    /// <summary>Along the middle line from the cut back and ahead to the next bend or the strip's end, mm.</summary>
    static (double Back, double Ahead) Flat(Profile profile, Cut cut)
    {
        var strip = profile.Strips[cut.Strip];
        var (line, side) = (strip.Middle, strip.Middle[cut.Side]);
        return (cut.Share * side.Length + Further(-1), (1 - cut.Share) * side.Length + Further(1));

        double Further(int step)
        {
            var more = 0.0;
            if (side.Bulge != 0) return more;
            for (var k = 1; k < line.Count; k++)
            {
                var i = cut.Side + step * k;
                if (strip.Closed) i = (i + line.Count) % line.Count;
                if (i < 0 || i >= line.Count || line[i].Bulge != 0 || line[i].StartsAlong.Dot(side.StartsAlong) < Parallel) break;
                more += line[i].Length;
            }
            return more;
        }
    }
}
