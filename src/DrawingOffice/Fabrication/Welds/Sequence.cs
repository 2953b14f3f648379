using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// An order of tacks and runs for some seams that keeps heat apart (common practice): tacks at the ends of every seam first, then in the middle,
/// then halving what is left; each next tack the farthest from the last. Then short runs between tacks, each run back towards the one before
/// it (back-step), the next one always far from the last two (skip), so that opposite sides take turns.
/// </summary>
public static class Sequence
{
    /// <summary>Farthest apart that tacks are set, mm: 30 up to 1.2 mm sheet, 50 up to 2, 75 beyond (common practice).</summary>
    public static double TackPitch(double thickness) => thickness <= 1.2 ? 30 : thickness <= 2 ? 50 : 75;

    /// <param name="thickness">mm.</param>
    public static WeldOrder Of(ImmutableArray<WeldLine> seams, double thickness)
    {
        var pitch = TackPitch(thickness);
        var tacks = ImmutableArray.CreateBuilder<WeldStep>();
        var runs = new List<WeldStep>();
        var levels = new List<List<WeldStep>>();
        for (var s = 0; s < seams.Length; s++)
        {
            // Spaces are a power of two, so that halving meets every tack.
            var spaces = 1;
            while (seams[s].Length / spaces > pitch) spaces *= 2;
            for (var k = 0; k <= spaces; k++)
            {
                var level = Level(k, spaces);
                while (levels.Count <= level) levels.Add([]);
                var at = seams[s].Length * k / spaces;
                levels[level].Add(new(s, at, at));
                if (k > 0) runs.Add(new(s, at, seams[s].Length * (k - 1) / spaces));
            }
        }
        Vec3? last = null;
        foreach (var level in levels)
            foreach (var step in Apart(level, seams, last is { } l ? [l] : []))
            {
                tacks.Add(step);
                last = Middle(step, seams);
            }
        return new(tacks.ToImmutable(), [.. Apart(runs, seams, [])]);
    }

    // 0 for an end, 1 for the middle, 2 for the quarters.
    static int Level(int k, int spaces)
    {
        if (k == 0 || k == spaces) return 0;
        var level = 0;
        for (var step = spaces; k % step != 0; step /= 2) level++;
        return level;
    }

    static Vec3 Middle(WeldStep step, ImmutableArray<WeldLine> seams) => seams[step.Seam].At((step.From + step.To) / 2);

    /// <summary>Each next one the farthest from the last two; the first as listed when nothing was done before.</summary>
    static IEnumerable<WeldStep> Apart(List<WeldStep> steps, ImmutableArray<WeldLine> seams, List<Vec3> done)
    {
        var left = new List<WeldStep>(steps);
        while (left.Count > 0)
        {
            var next = left.MaxBy(s => done.TakeLast(2).Select(d => d.DistanceTo(Middle(s, seams))).DefaultIfEmpty(0).Min());
            left.Remove(next);
            done.Add(Middle(next, seams));
            yield return next;
        }
    }
}
