namespace WitnessMark.Maths;

/// <summary>
/// Seeded chance: the same seed gives the same numbers on every machine, which <c>System.Random</c> does not promise.
/// xoshiro256** (Blackman and Vigna), seeded through splitmix64. Not for secrets.
/// </summary>
public sealed class Chance
{
    ulong _a, _b, _c, _d;
    double _spareNormal;

    public Chance(ulong seed) => Restart(seed);

    /// <summary>As if newly made from this seed, without a new object.</summary>
    public void Restart(ulong seed)
    {
        _spareNormal = double.NaN;
        _a = Split(ref seed);
        _b = Split(ref seed);
        _c = Split(ref seed);
        _d = Split(ref seed);
    }

    public ulong NextBits()
    {
        var result = ulong.RotateLeft(_b * 5, 7) * 9;
        var t = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= t;
        _d = ulong.RotateLeft(_d, 45);
        return result;
    }

    /// <summary>Uniform in [0, 1), 53 bits.</summary>
    public double Uniform() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    public double Uniform(double low, double high) => low + (high - low) * Uniform();

    /// <summary>Uniform whole number in [0, below); below must be positive.</summary>
    public int Below(int below) => (int)Math.BigMul(NextBits(), (ulong)below, out _);

    /// <summary>Standard normal, polar method.</summary>
    public double Normal()
    {
        if (!double.IsNaN(_spareNormal))
        {
            var spare = _spareNormal;
            _spareNormal = double.NaN;
            return spare;
        }
        while (true)
        {
            var u = 2 * Uniform() - 1;
            var v = 2 * Uniform() - 1;
            var s = u * u + v * v;
            if (s is >= 1 or 0) continue;
            var f = Math.Sqrt(-2 * Math.Log(s) / s);
            _spareNormal = v * f;
            return u * f;
        }
    }

    static ulong Split(ref ulong x)
    {
        var z = x += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
