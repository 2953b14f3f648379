using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Wear;
using WitnessMark.DrawingOffice.Intent.Words;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>Everything that was measured of one facet, ready to be asked how well a size explains it.</summary>
sealed class Evidence
{
    // Prior densities of a thing off the lists: any size alike in the logarithm (the common constant drops out);
    // a pitch between 0.2 and 6.4 mm; a flank angle within 30°; a core within a factor 1.5 of what the size suggests.
    static readonly double LogPitchSpan = Math.Log(Math.Log(32));
    static readonly double LogCoreSpan = Math.Log(Math.Log(1.5));
    static readonly double LogFlankSpan = Math.Log(Math.PI / 6);

    readonly bool _principal;
    readonly ImmutableArray<Item> _items;

    Evidence(Facet facet, bool principal, Allowance allowance, ImmutableArray<Item> items) =>
        (Facet, _principal, Allowance, _items) = (facet, principal, allowance, items);

    public Facet Facet { get; }

    public Allowance Allowance { get; }

    /// <summary>No nominal outside this range is worth weighing.</summary>
    public static (double Low, double High) Reach(Question question, Practice practice)
    {
        var allowance = practice.For(question.Subject, question.Principal);
        var places = question.Measurements.Where(m => m.Facet == question.Principal).Select(m => Bared(m, allowance, practice)).ToArray();
        return Widened(allowance, places.Min(p => p.Low), places.Max(p => p.High));
    }

    // Room for what the making adds or takes: the widest allowance of a 6 mm pitch.
    static (double Low, double High) Widened(Allowance allowance, double low, double high)
    {
        var room = Math.Abs(allowance.Mean(0, 6)) + 8 * allowance.Std(high, 6);
        return (Math.Max(low - room, high / 1000), high + room);
    }

    IEnumerable<Place> Places => _items.SelectMany(i => i.Places);

    public static ImmutableArray<Evidence> Of(Question question, Practice practice) =>
    [
        .. question.Measurements.GroupBy(m => m.Facet).OrderBy(g => g.Key).Select(g =>
        {
            var allowance = practice.For(question.Subject, g.Key);
            return new Evidence(g.Key, g.Key == question.Principal, allowance,
                [.. g.GroupBy(m => m.Item).Select(item => Itemised(question, item, allowance, practice))]);
        }),
    ];

    /// <summary>Logarithm of the density of all readings; a size that does not have the facet (a plain pin's pitch) explains nothing.</summary>
    public double LogLikelihood(Candidate candidate) =>
        candidate.Of(Facet) is { } nominal ? LogLikelihood(nominal, candidate.Pitch ?? 0) : double.NegativeInfinity;

    /// <summary>The same for a thing off the lists: every nominal, by its prior density (trapezoidal rule); with the nominal it then seems to have.</summary>
    public (double Log, Uncertain Nominal) OffList(double pitch)
    {
        var (low, high) = Widened(Allowance, _items.Min(i => i.Low), _items.Max(i => i.High));
        var narrowest = 1 / Math.Sqrt(_items.Sum(i => 1 / Variance(i, high, pitch)));
        var nodes = (int)Math.Clamp((high - low) / (0.8 * narrowest), 32, 4096);
        var step = (high - low) / nodes;
        var nominals = Enumerable.Range(0, nodes + 1).Select(i => low + i * step).ToArray();
        var logs = nominals.Select(n => LogLikelihood(n, pitch) + LogPrior(n)).ToArray();
        var all = LogSum.Of(logs);
        var weights = logs.Select(l => Math.Exp(l - all)).ToArray();
        var mean = weights.Zip(nominals, (w, n) => w * n).Sum();
        var variance = weights.Zip(nominals, (w, n) => w * (n - mean) * (n - mean)).Sum();
        return (all + Math.Log(step), new Uncertain(mean, Math.Sqrt(variance)));
    }

    public IEnumerable<Uncertain> Wear(Candidate candidate)
    {
        var (mean, std) = Made(candidate.Of(Facet)!.Value, candidate.Pitch ?? 0);
        return _items.SelectMany(i => i.Wear(mean, std));
    }

    /// <summary>Smallest two-sided tail chance of any reading: below about 0.001 the size does not explain it.</summary>
    public double Tail(Candidate candidate)
    {
        var (mean, std) = Made(candidate.Of(Facet)!.Value, candidate.Pitch ?? 0);
        return Places.Select(p => p.Blurred(std).Below(mean)).Min(below => 2 * Math.Min(below, 1 - below));
    }

    double LogLikelihood(double nominal, double pitch)
    {
        var (mean, std) = Made(nominal, pitch);
        var sum = 0.0;
        foreach (var item in _items) sum += item.LogDensity(mean, std);
        return sum;
    }

    (double Mean, double Std) Made(double nominal, double pitch) => Facet == Facet.Pitch
        ? (Allowance.Mean(nominal, nominal), Allowance.Std(nominal, nominal))
        : (Allowance.Mean(nominal, pitch), Allowance.Std(nominal, pitch));

    double Variance(Item item, double nominal, double pitch)
    {
        var std = Made(nominal, pitch).Std;
        return item.Places.Length == 1 ? std * std + item.Places[0].Sigma * item.Places[0].Sigma : std * std;
    }

    double LogPrior(double nominal) => (_principal, Facet) switch
    {
        (true, _) => -Math.Log(nominal),
        (_, Facet.Pitch) => -Math.Log(nominal) - LogPitchSpan,
        (_, Facet.Flank) => -LogFlankSpan,
        _ => -Math.Log(nominal) - LogCoreSpan,
    };

    static Item Itemised(Question question, IGrouping<string, Measured> item, Allowance allowance, Practice practice)
    {
        var places = item.Select(m => Bared(m, allowance, practice)).ToImmutableArray();
        var typical = item.Average(m => m.Value.Value);
        return Item.Of(places, allowance.Std(typical, 0)) ?? throw new RefusedException(Refusal.Of(
            item.Key == "" ? $"{Sentences.Of(question.Subject)}" : item.Key,
            string.Join(" and ", item.Select(m => $"{m.Value.Value:0.###}")),
            "these cannot be one and the same made size; measure again, or name the items apart"));
    }

    static Place Bared(Measured m, Allowance allowance, Practice practice)
    {
        var wear = practice.Wear(allowance, m.Condition);
        if (m.Coat is not { } coat) return new Place(m.Value.Value, m.Value.Std, allowance.WearSign, wear);
        var (added, blur) = (allowance.CoatFaces * coat.Thickness, allowance.CoatFaces * coat.Std);
        return new Place(m.Value.Value - added, Math.Sqrt(m.Value.Std * m.Value.Std + blur * blur), allowance.WearSign, wear);
    }
}
