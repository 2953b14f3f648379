using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Wear;

/// <summary>One measured place, its coat taken off the reading.</summary>
/// <param name="Sign">+1 or −1: which way wear moves the size; 0: none.</param>
/// <param name="Wear">Mixture of mean wears, mm, with weights that add to 1.</param>
sealed record Place(double Value, double Sigma, int Sign, ImmutableArray<(double Weight, double Scale)> Wear)
{
    // Eight standard deviations, and wear at odds of 1 in e^20, are left out of integrals.
    const double Sigmas = 8, Scales = 20;

    double Reach => Scales * Wear.Max(w => w.Scale);

    /// <summary>No made size below this can be meant.</summary>
    public double Low => Value - Sigmas * Sigma - (Sign > 0 ? Reach : 0);

    /// <summary>No made size above this can be meant.</summary>
    public double High => Value + Sigmas * Sigma + (Sign < 0 ? Reach : 0);

    /// <summary>The place, when the made size itself is only known to a standard deviation.</summary>
    public Place Blurred(double spread) => this with { Sigma = Math.Sqrt(Sigma * Sigma + spread * spread) };

    public double LogDensity(double made)
    {
        var sum = LogSum.Empty;
        foreach (var (weight, scale) in Wear) sum = sum.With(Math.Log(weight) + Worn.LogDensity(Departure(made), Sigma, scale));
        return sum.Value;
    }

    /// <summary>Chance of a reading no farther along the way of wear, given the made size.</summary>
    public double Below(double made) => Wear.Sum(w => w.Weight * Worn.Below(Departure(made), Sigma, w.Scale));

    /// <summary>Mean and standard deviation of the wear, given the made size.</summary>
    public Uncertain WearFrom(double made)
    {
        double total = 0, first = 0, second = 0;
        var scale = LogDensity(made);
        foreach (var (weight, mean) in Wear)
        {
            var p = weight * Math.Exp(Worn.LogDensity(Departure(made), Sigma, mean) - scale);
            var w = Worn.Wear(Departure(made), Sigma, mean);
            (total, first, second) = (total + p, first + p * w.Value, second + p * (w.Value * w.Value + w.Std * w.Std));
        }
        var average = first / total;
        return new Uncertain(average, Math.Sqrt(Math.Max(0, second / total - average * average)));
    }

    double Departure(double made) => Sign < 0 ? made - Value : Value - made;
}

/// <summary>
/// The places measured on one item, which share the error it was made with. One place has a closed form; several are
/// integrated over the made size on an even grid (trapezoidal rule, finer than the narrowest Gaussian: error below 1e-7).
/// </summary>
sealed class Item
{
    const int MostNodes = 4096;

    // Below this, logarithm of a density against the largest, a made size holds nothing.
    const double Least = -30;

    readonly ImmutableArray<Place> _places;
    readonly double[] _made = [];
    readonly double[] _log = [];

    // Wear at each place and node, worked out when first asked for: the same for every candidate.
    readonly Uncertain?[][] _wear = [];
    readonly double _step;

    Item(ImmutableArray<Place> places) => (_places, Low, High) = (places, places[0].Low, places[0].High);

    Item(ImmutableArray<Place> places, double low, double high)
    {
        var narrowest = 1 / Math.Sqrt(places.Sum(p => 1 / (p.Sigma * p.Sigma)));
        var nodes = (int)Math.Clamp((high - low) / narrowest, 32, MostNodes);
        _places = places;
        _step = (high - low) / nodes;
        // Where the count of nodes is capped, a ± finer than the grid is blurred to its step.
        var seen = places.Select(p => p with { Sigma = Math.Max(p.Sigma, _step) }).ToArray();
        var all = Enumerable.Range(0, nodes + 1).Select(i => low + i * _step).Select(z => (Made: z, Log: seen.Sum(p => p.LogDensity(z)))).ToArray();
        var least = all.Max(n => n.Log) + Least;
        var kept = all[Array.FindIndex(all, n => n.Log >= least)..(Array.FindLastIndex(all, n => n.Log >= least) + 1)];
        (_made, _log) = ([.. kept.Select(n => n.Made)], [.. kept.Select(n => n.Log)]);
        _wear = [.. places.Select(_ => new Uncertain?[_made.Length])];
        (Low, High) = (_made[0], _made[^1]);
    }

    /// <summary>No made size below this can be meant.</summary>
    public double Low { get; }

    /// <summary>No made size above this can be meant.</summary>
    public double High { get; }

    public ImmutableArray<Place> Places => _places;

    /// <summary>Nothing when no made size at all could give these readings.</summary>
    /// <param name="spread">
    /// Standard deviation of the making. Of several places a ± finer than a tenth of it is taken as that tenth: it would tell
    /// no more of the nominal (the sum grows by half a per cent), and cost a finer grid.
    /// </param>
    public static Item? Of(ImmutableArray<Place> places, double spread)
    {
        if (places.Length == 1) return new Item(places);
        places = [.. places.Select(p => p with { Sigma = Math.Max(p.Sigma, spread / 10) })];
        var (low, high) = (places.Max(p => p.Low), places.Min(p => p.High));
        return low < high ? new Item(places, low, high) : null;
    }

    /// <summary>Logarithm of the readings' density when the item was made to mean ± spread.</summary>
    public double LogDensity(double mean, double spread)
    {
        if (_places.Length == 1) return _places[0].Blurred(spread).LogDensity(mean);
        var sum = LogSum.Empty;
        var (first, last) = Near(mean, spread);
        for (var i = first; i <= last; i++) sum = sum.With(LogJoint(i, mean, spread));
        return sum.Value + Math.Log(_step / (spread * Math.Sqrt(2 * Math.PI)));
    }

    /// <summary>The wear of each place when the item was made to mean ± spread.</summary>
    public IEnumerable<Uncertain> Wear(double mean, double spread)
    {
        if (_places.Length == 1) return [_places[0].Blurred(spread).WearFrom(mean)];
        var all = LogDensity(mean, spread) - Math.Log(_step / (spread * Math.Sqrt(2 * Math.PI)));
        var (first, last) = Near(mean, spread);
        var weights = Enumerable.Range(first, last - first + 1).Select(i => Math.Exp(LogJoint(i, mean, spread) - all)).ToArray();
        return _places.Select((p, place) => Mixed(weights, i => _wear[place][first + i] ??= p.WearFrom(_made[first + i])));
    }

    // The nodes within nine standard deviations of the mean, and always one: the rest holds less than 1 in e^40.
    (int First, int Last) Near(double mean, double spread)
    {
        int Node(double made) => (int)Math.Clamp(Math.Round((made - _made[0]) / _step), 0, _made.Length - 1);
        return (Node(mean - 9 * spread), Node(mean + 9 * spread));
    }

    // The constant of the Gaussian is left to the caller.
    double LogJoint(int node, double mean, double spread)
    {
        var u = (_made[node] - mean) / spread;
        return _log[node] - u * u / 2;
    }

    static Uncertain Mixed(double[] weights, Func<int, Uncertain> wear)
    {
        double first = 0, second = 0;
        for (var i = 0; i < weights.Length; i++)
        {
            if (weights[i] < 1e-8) continue;
            var w = wear(i);
            (first, second) = (first + weights[i] * w.Value, second + weights[i] * (w.Value * w.Value + w.Std * w.Std));
        }
        return new Uncertain(first, Math.Sqrt(Math.Max(0, second - first * first)));
    }
}
