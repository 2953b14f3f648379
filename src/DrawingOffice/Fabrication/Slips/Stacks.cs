using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>The fewest slip gauges of a set for a height, each block once; exact in the set's own step.</summary>
public static class Stacks
{
    /// <summary>More than this are not wrung together by hand.</summary>
    public const int MostBlocks = 7;

    /// <param name="height">mm; taken to the nearest step of the set.</param>
    /// <param name="grade">0, 1 or 2: how true the blocks are.</param>
    /// <param name="wear">Thickness of the wear block at each end, mm; 0: none.</param>
    /// <returns>The stack, thickest block first between its wear blocks; or why there is none, and the nearest heights that there are.</returns>
    public static Parsed<SlipStack> Find(SlipSet set, double height, string grade = "1", double wear = 0)
    {
        var step = Greatest(set);
        if (!(height > 0) || !(height < 10_000)) return Refusal.Of("height", N(height), "give more than 0 mm");
        if (!(wear >= 0) || Math.Abs(wear / set.Step - Math.Round(wear / set.Step)) > 1e-6) return Refusal.Of("wear block", $"{N(wear)} mm", "give the thickness of one in whole steps of the set");
        var ends = 2 * (int)Math.Round(wear / set.Step);
        var wanted = (int)Math.Round(height / (set.Step * step)) * step;
        if (Fewest(set.Blocks, wanted - ends) is not { } blocks) return Nearest(set, step, wanted, ends, height);
        var mm = blocks.Select(set.Mm).ToImmutableArray();
        if (wear > 0) mm = [wear, .. mm, wear];
        var variance = 0.0;
        foreach (var block in mm)
        {
            var limit = SlipSets.Limit(block, grade);
            if (!limit.Ok) return limit.Refusal!;
            // Anywhere within the limits alike (JCGM 100, 4.3.7).
            variance += limit.Value * limit.Value / 3;
        }
        return new SlipStack(set.Name, mm, new(mm.Sum(), Math.Sqrt(variance)));
    }

    /// <summary>The largest step in which all blocks are whole.</summary>
    static int Greatest(SlipSet set) => set.Blocks.Aggregate(0, (a, b) => (int)System.Numerics.BigInteger.GreatestCommonDivisor(a, b));

    static Refusal Nearest(SlipSet set, int step, int wanted, int ends, double height)
    {
        string? Way(int by)
        {
            for (var k = 1; k <= 4000; k++)
            {
                var at = wanted + by * k * step;
                if (at - ends <= 0 || at - ends > set.Blocks.Sum()) return null;
                if (Fewest(set.Blocks, at - ends) is not null) return $"{N(at * set.Step)} mm";
            }
            return null;
        }
        var near = string.Join(" and ", new[] { Way(-1), Way(1) }.OfType<string>());
        return Refusal.Of("height", $"{N(height)} mm", near.Length > 0 ? $"{set.Name} cannot make it with up to {MostBlocks} blocks, each once; the nearest it can are {near}"
            : $"{set.Name} makes nothing near it; choose a shorter bar, another angle or another set");
    }

    /// <returns>Thickest first; null when it cannot be done with <see cref="MostBlocks"/>.</returns>
    internal static ImmutableArray<int>? Fewest(ImmutableArray<int> ascending, int wanted)
    {
        if (wanted <= 0) return null;
        int[] blocks = [.. ascending.Reverse()];
        var sums = new int[blocks.Length + 1];
        for (var i = 0; i < blocks.Length; i++) sums[i + 1] = sums[i] + blocks[i];
        for (var count = 1; count <= Math.Min(MostBlocks, blocks.Length); count++)
        {
            var chosen = new int[count];
            if (Choose(blocks, sums, 0, count, wanted, chosen)) return [.. chosen];
        }
        return null;
    }

    /// <summary>Thickest first from <paramref name="from"/> on: the rest must lie between the thinnest and the thickest that are left.</summary>
    static bool Choose(int[] blocks, int[] sums, int from, int count, int wanted, int[] chosen)
    {
        var n = blocks.Length;
        if (count == 1)
        {
            var at = Array.BinarySearch(blocks, from, n - from, wanted, Descending);
            if (at < 0) return false;
            chosen[^1] = wanted;
            return true;
        }
        for (var i = from; i <= n - count; i++)
        {
            if (sums[i + count] - sums[i] < wanted) return false;
            var rest = wanted - blocks[i];
            if (rest < sums[n] - sums[n - count + 1]) continue;
            chosen[chosen.Length - count] = blocks[i];
            if (Choose(blocks, sums, i + 1, count - 1, rest, chosen)) return true;
        }
        return false;
    }

    static readonly Comparer<int> Descending = Comparer<int>.Create((a, b) => b.CompareTo(a));

    static string N(double mm) => mm.ToString("0.####", CultureInfo.InvariantCulture);
}
