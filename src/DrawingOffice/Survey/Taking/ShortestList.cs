using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>Which candidates to take.</summary>
/// <param name="Chosen">Indices of candidates, in no order of working.</param>
/// <param name="Least">No list can be shorter.</param>
/// <param name="LargestVariance">Of any dimension, mm².</param>
sealed record Choice(ImmutableArray<int> Chosen, int Least, ImmutableArray<double> Redundancy, double LargestVariance);

/// <summary>
/// The shortest list that holds everything and checks every reading. First what holds most is taken until nothing more is loose, then
/// what checks most of what nothing checks, then whatever can go again is dropped, then what the wanted ± asks for is added. This greedy course is
/// run several times with the scores shaken a little, and the shortest list kept; it ends early when it meets the counting bound.
/// </summary>
/// <remarks>
/// Bound: as many readings as there are free motions, and one more to check them; and every feature of k unknowns needs k + 1 readings that
/// touch it, or one of them would be unchecked. Not a proof that no list between the bound and the one found exists: on small parts it
/// was compared with all lists there are (tests).
/// </remarks>
static class ShortestList
{
    /// <summary>Redundancy number from which a reading counts as checked: a misreading of about 13 of its standard uncertainties is then found four times in five.</summary>
    public const double Checked = 0.09;

    /// <summary>Candidates × unknowns up to which the course is run again. Cause: a second on a slow machine.</summary>
    const int Quick = 200_000;

    const int Courses = 40;

    public static Choice Of(ITakingNetwork network, double? wantedStd, CancellationToken stop)
    {
        var start = Knowledge.Of(network);
        var least = Bound(network, start);
        List<int>? best = null;
        var courses = network.Candidates.Count * network.BlockOf.Length <= Quick ? Courses : 1;
        var chance = new Chance(20261126);
        for (var course = 0; course < courses; course++)
        {
            stop.ThrowIfCancellationRequested();
            var list = Course(network, start, course == 0 ? null : chance, stop);
            if (best is null || Better(network, start, list, best)) best = list;
            if (best.Count <= least && Unchecked(network, start, best) == 0) break;
        }
        var known = Known(network, start, best!);
        if (wantedStd is { } std) Sharpen(network, known, best!, std * std, stop);
        var largest = network.Dimensions.Select(d => known.Variance(d)).DefaultIfEmpty(0).Max();
        return new Choice([.. best!], least, [.. best!.Select(c => Math.Clamp(known.Redundancy(network.Candidates[c]), 0, 1))], largest);
    }

    static List<int> Course(ITakingNetwork network, Knowledge start, Chance? chance, CancellationToken stop)
    {
        var (known, chosen) = (start.Copy(), new List<int>());
        Hold(network, known, chosen, chance, stop);
        Check(network, known, chosen, chance, stop);
        return Shortened(network, start, chosen, stop);
    }

    /// <summary>Fewer unchecked before fewer readings.</summary>
    static bool Better(ITakingNetwork network, Knowledge start, List<int> a, List<int> b) =>
        (Unchecked(network, start, a), a.Count).CompareTo((Unchecked(network, start, b), b.Count)) < 0;

    static Knowledge Known(ITakingNetwork network, Knowledge start, IEnumerable<int> chosen)
    {
        var known = start.Copy();
        foreach (var c in chosen) known.Add(network.Candidates[c]);
        return known;
    }

    static int Unchecked(ITakingNetwork network, Knowledge start, List<int> chosen)
    {
        var known = Known(network, start, chosen);
        return Used(network, chosen).Count(a => known.Redundancy(a) < Checked);
    }

    static IEnumerable<TakeRow> Used(ITakingNetwork network, IEnumerable<int> chosen) => network.Taken.Concat(chosen.Select(c => network.Candidates[c]));

    static double Shaken(Chance? chance) => chance is null ? 1 : chance.Uniform(0.7, 1.3);

    static void Hold(ITakingNetwork network, Knowledge known, List<int> chosen, Chance? chance, CancellationToken stop)
    {
        while (true)
        {
            stop.ThrowIfCancellationRequested();
            var (best, most) = (-1, 0.0);
            for (var c = 0; c < network.Candidates.Count; c++)
            {
                var variance = known.Variance(network.Candidates[c]);
                if (variance * Scale(network.Candidates[c]) < Knowledge.Loose) continue;
                // Information, so that a fine tool goes before a rough one.
                var gain = Math.Log(1 + variance * network.Candidates[c].Weight) * Shaken(chance);
                if (gain > most) (best, most) = (c, gain);
            }
            if (best < 0) return;
            chosen.Add(best);
            known.Add(network.Candidates[best]);
        }
    }

    /// <summary>Brings a reading of an angle to mm, so that one limit says what is loose: by the largest of its derivatives.</summary>
    static double Scale(in TakeRow row) => 1 / Math.Max(1e-12, row.Rates.Max(r => r * r));

    static void Check(ITakingNetwork network, Knowledge known, List<int> chosen, Chance? chance, CancellationToken stop)
    {
        while (true)
        {
            stop.ThrowIfCancellationRequested();
            var open = Used(network, chosen).Where(a => known.Redundancy(a) < Checked).ToList();
            if (open.Count == 0) return;
            var (best, most) = (-1, 0.02);
            for (var c = 0; c < network.Candidates.Count; c++)
            {
                if (chosen.Contains(c)) continue;
                var row = network.Candidates[c];
                var own = row.Std * row.Std + known.Variance(row);
                var gain = 0.0;
                foreach (var a in open)
                {
                    var shared = known.Between(a, row);
                    var before = known.Redundancy(a);
                    var after = before + a.Weight * shared * shared / own;
                    gain += after >= Checked ? 1 : (after - before) / Checked * 0.5;
                }
                // A check that itself is unchecked moves the trouble.
                if (1 - row.Weight * known.Variance(row) * row.Std * row.Std / own < Checked) gain -= 1;
                gain *= Shaken(chance);
                if (gain > most) (best, most) = (c, gain);
            }
            if (best < 0) return;
            chosen.Add(best);
            known.Add(network.Candidates[best]);
        }
    }

    /// <summary>Drops whatever can go without anything coming loose or unchecked.</summary>
    static List<int> Shortened(ITakingNetwork network, Knowledge start, List<int> chosen, CancellationToken stop)
    {
        var (loose, open) = (LooseIn(network, Known(network, start, chosen)), Unchecked(network, start, chosen));
        for (var i = chosen.Count - 1; i >= 0; i--)
        {
            stop.ThrowIfCancellationRequested();
            var without = chosen.Where((_, k) => k != i).ToList();
            if (Unchecked(network, start, without) > open || LooseIn(network, Known(network, start, without)) > loose) continue;
            chosen = without;
        }
        return chosen;
    }

    static int LooseIn(ITakingNetwork network, Knowledge known) =>
        network.Candidates.Count(c => known.Variance(c) * Scale(c) >= Knowledge.Loose) + network.Dimensions.Count(d => known.Variance(d) >= Knowledge.Loose);

    /// <summary>Adds what lowers the largest variance most, until all are small enough or nothing helps.</summary>
    static void Sharpen(ITakingNetwork network, Knowledge known, List<int> chosen, double wanted, CancellationToken stop)
    {
        while (chosen.Count < network.Candidates.Count)
        {
            stop.ThrowIfCancellationRequested();
            if (network.Dimensions.Count == 0) return;
            var worst = network.Dimensions.MaxBy(d => known.Variance(d));
            var now = known.Variance(worst);
            if (now <= wanted || now >= Knowledge.Loose) return;
            var best = Enumerable.Range(0, network.Candidates.Count).Except(chosen).MaxBy(c => Fall(known, worst, network.Candidates[c]));
            if (chosen.Contains(best) || Fall(known, worst, network.Candidates[best]) < 0.02 * now) return;
            chosen.Add(best);
            known.Add(network.Candidates[best]);
        }
    }

    static double Fall(Knowledge known, in TakeRow dimension, in TakeRow row)
    {
        var shared = known.Between(dimension, row);
        return shared * shared / (row.Std * row.Std + known.Variance(row));
    }

    static int Bound(ITakingNetwork network, Knowledge start)
    {
        var (known, chosen) = (start.Copy(), new List<int>());
        Hold(network, known, chosen, null, CancellationToken.None);
        var free = chosen.Count == 0 ? 0 : chosen.Count + (network.Taken.Count == 0 ? 1 : 0);
        var blocks = network.BlockOf.Length == 0 ? 0 : network.BlockOf.Max() + 1;
        if (blocks < 3 || network.Candidates.Count == 0 || network.Given.Count > 0) return free;
        HashSet<int> Touched(TakeRow r) => [.. r.Columns.Where((_, k) => r.Rates[k] != 0).Select(u => network.BlockOf[u])];
        var touching = new int[blocks];
        foreach (var b in network.Taken.SelectMany(Touched)) touching[b]++;
        var missing = Enumerable.Range(0, blocks).Sum(b => Math.Max(0, network.BlockOf.Count(o => o == b) + 1 - touching[b]));
        var most = network.Candidates.Max(c => Touched(c).Count);
        return Math.Max(free, (missing + most - 1) / most);
    }
}
