using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>From the choice of readings to the list a person works down, flat or in space.</summary>
static class Listing
{
    /// <param name="stage">What comes first, from 0: the order of working.</param>
    /// <param name="settle">What to do about features that nothing settles: the end of a sentence that names them.</param>
    /// <param name="unsized">Ids of round features whose rough size nobody said.</param>
    public static TakingList<TKind> Of<TKind>(
        ITakingNetwork<TKind> network, double? wantedStd, Func<TakeCandidate<TKind>, int> stage, Func<int, string> settle, IEnumerable<string> unsized, CancellationToken stop)
    {
        var choice = ShortestList.Of(network, wantedStd, stop);
        // On the plate the part is stood one way before it is turned: set-up by set-up.
        var ordered = choice.Chosen.Zip(choice.Redundancy, (c, r) => (At: network.At(c), Redundancy: r))
            .OrderBy(s => stage(s.At)).ThenBy(s => s.At.Tool.Way).ThenBy(s => s.At.Tool.Way == Way.HeightGauge ? s.At.To : 0).ThenBy(s => s.At.Kind).ThenBy(s => s.At.From).ThenBy(s => s.At.To);
        ImmutableArray<TakingStep<TKind>> steps = [.. ordered.Select((s, i) => new TakingStep<TKind>(
            i + 1, s.At.Kind, network.Id(s.At.From), s.At.To < 0 ? null : network.Id(s.At.To), s.At.Expected, s.At.Tool.Instrument, s.At.Tool.Way, s.Redundancy))];
        ImmutableArray<string> loose = [.. Loose(network, choice.Chosen)];
        ImmutableArray<int> open = [.. steps.Where(s => s.Redundancy < ShortestList.Checked).Select(s => s.Number)];
        double? largest = loose.IsEmpty ? Math.Sqrt(choice.LargestVariance) : null;
        return new(steps, choice.Least, loose, open, largest, [.. Cautions(loose, open, largest, wantedStd, settle, unsized)]);
    }

    /// <summary>Features that some part of the list leaves loose.</summary>
    static IEnumerable<string> Loose<TKind>(ITakingNetwork<TKind> network, IEnumerable<int> chosen)
    {
        var known = Knowledge.Of(network);
        foreach (var c in chosen) known.Add(network.Candidates[c]);
        foreach (var (feature, unknowns) in network.Held)
            if (unknowns.Any(u => known.Variance(new TakeRow([u], [1], 1)) >= Knowledge.Loose)) yield return network.Id(feature);
    }

    static IEnumerable<string> Cautions(ImmutableArray<string> loose, ImmutableArray<int> open, double? largest, double? wanted, Func<int, string> settle, IEnumerable<string> unsized)
    {
        if (!loose.IsEmpty) yield return $"No reading with these tools settles {string.Join(", ", loose)}; {settle(loose.Length)}.";
        if (!open.IsEmpty) yield return $"Nothing else checks reading{(open.Length == 1 ? "" : "s")} {string.Join(", ", open)}: take {(open.Length == 1 ? "it" : "each")} twice.";
        if (largest is { } std && wanted is { } w && std > w) yield return FormattableString.Invariant($"The wanted ± {2 * w:0.###} mm is out of reach of these tools: ± {2 * std:0.###} mm is the least sure.");
        foreach (var id in unsized) yield return $"{id}: no rough size was sketched; whether the jaws go in is not known.";
        yield return "What stands between the jaws is not known from a sketch: where a reading cannot be taken, leave the box empty, and the sheet finds another.";
    }
}
