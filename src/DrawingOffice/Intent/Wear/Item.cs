using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Wear;

/// <summary>One measured place, its coat taken off the reading.</summary>
/// <param name="Sign">+1 or −1: which way wear moves the size; 0: none.</param>
/// <param name="Wear">Mixture of mean wears, mm, with weights that add to 1.</param>
sealed record Place(double Value, double Sigma, int Sign, ImmutableArray<(double Weight, double Scale)> Wear)
{
    // Eight standard deviations, and wear at odds of 1 in e^30, are left out of integrals.
    const double Sigmas = 8, Scales = 30;

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

    readonly ImmutableArray<Place> _places;
    readonly double[] _made = [];
    readonly double[] _log = [];
    readonly double _step;

    Item(ImmutableArray<Place> places) => _places = places;

    Item(ImmutableArray<Place> places, double low, double high) : this(places)
    {
        var narrowest = 1 / Math.Sqrt(places.Sum(p => 1 / (p.Sigma * p.Sigma)));
        var nodes = (int)Math.Clamp((high - low) / (0.8 * narrowest), 32, MostNodes);
        _step = (high - low) / nodes;
        // A ± finer than the grid says no more about a made size than the grid's own step.
        var seen = places.Select(p => p with { Sigma = Math.Max(p.Sigma, _step) }).ToArray();
        _made = [.. Enumerable.Range(0, nodes + 1).Select(i => low + i * _step)];
        _log = [.. _made.Select(z => seen.Sum(p => p.LogDensity(z)))];
    }

    public ImmutableArray<Place> Places => _places;

    /// <summary>Nothing when no made size at all could give these readings.</summary>
    public static Item? Of(ImmutableArray<Place> places)
    {
        if (places.Length == 1) return new Item(places);
        var (low, high) = (places.Max(p => p.Low), places.Min(p => p.High));
        return low < high ? new Item(places, low, high) : null;
    }

    /// <summary>Logarithm of the readings' density when the item was made to mean ± spread.</summary>
    public double LogDensity(double mean, double spread)
    {
        if (_places.Length == 1) return _places[0].Blurred(spread).LogDensity(mean);
        var sum = LogSum.Empty;
        for (var i = 0; i < _made.Length; i++) sum = sum.With(LogJoint(i, mean, spread));
        return sum.Value + Math.Log(_step);
    }

    /// <summary>The wear of each place when the item was made to mean ± spread.</summary>
    public IEnumerable<Uncertain> Wear(double mean, double spread)
    {
        if (_places.Length == 1) return [_places[0].Blurred(spread).WearFrom(mean)];
        var all = LogDensity(mean, spread) - Math.Log(_step);
        var weights = _made.Select((_, i) => Math.Exp(LogJoint(i, mean, spread) - all)).ToArray();
        return _places.Select(p => Mixed(weights, _made.Select(p.WearFrom)));
    }

    double LogJoint(int node, double mean, double spread)
    {
        var u = (_made[node] - mean) / spread;
        return _log[node] - u * u / 2 - Math.Log(spread * Math.Sqrt(2 * Math.PI));
    }

    static Uncertain Mixed(double[] weights, IEnumerable<Uncertain> wears)
    {
        double first = 0, second = 0;
        foreach (var (weight, wear) in weights.Zip(wears))
        {
            if (weight < 1e-12) continue;
            (first, second) = (first + weight * wear.Value, second + weight * (wear.Value * wear.Value + wear.Std * wear.Std));
        }
        return new Uncertain(first, Math.Sqrt(Math.Max(0, second - first * first)));
    }
}
