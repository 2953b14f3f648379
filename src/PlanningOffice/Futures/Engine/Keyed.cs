using System.Runtime.CompilerServices;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// Chance by key: the number of a job, a lead time or a discovery in a future depends on its own id, the seed and the future,
/// and on nothing else, so that a change elsewhere in the plan shifts no draw (common random numbers) and futures may be run
/// in any order. The mixing is splitmix64's (Steele, Lea and Flood, Fast splittable pseudorandom number generators, 2014).
/// </summary>
static class Keyed
{
    const ulong Golden = 0x9E3779B97F4A7C15;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>64 bits for one quantity in one future.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ulong Bits(ulong key, int future) => Mix(key + Golden * (ulong)(future + 1));

    /// <param name="use">What of the thing: hours, price, days.</param>
    public static ulong Key(Guid id, int use, ulong seed)
    {
        Span<byte> bytes = stackalloc byte[16];
        id.TryWriteBytes(bytes);
        var a = System.Buffers.Binary.BinaryPrimitives.ReadUInt64LittleEndian(bytes);
        var b = System.Buffers.Binary.BinaryPrimitives.ReadUInt64LittleEndian(bytes[8..]);
        return Mix(Mix(Mix(seed + Golden) ^ a) ^ Mix(b + Golden * (ulong)(use + 1)));
    }

    /// <summary>Uniform in [0, 1), 24 bits, from the upper and the lower half of 64.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Upper(ulong bits) => (bits >> 40) * (1f / (1 << 24));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Lower(ulong bits) => ((uint)bits >> 8) * (1f / (1 << 24));
}
