using System.Collections.Immutable;

namespace WitnessMark.Stores.Devices;

/// <summary>
/// Keeps which devices are paired. A name is a label and nothing hangs on it, so the last one given counts and no version is
/// asked for; a device that was dropped is gone, and its key opens nothing from then on.
/// </summary>
public interface IDeviceStore
{
    /// <summary>All of them, the first paired first.</summary>
    Task<ImmutableArray<PairedDevice>> All(CancellationToken cancel = default);

    /// <summary>Null when no device holds a key with this hash.</summary>
    Task<PairedDevice?> Holding(string keyHash, CancellationToken cancel = default);

    /// <exception cref="Maths.RefusedException">It is not fit to be kept.</exception>
    Task Pair(PairedDevice device, CancellationToken cancel = default);

    /// <returns>False when there is no such device.</returns>
    /// <exception cref="Maths.RefusedException">It is no name.</exception>
    Task<bool> Rename(Guid device, string name, CancellationToken cancel = default);

    /// <returns>False when there was no such device.</returns>
    Task<bool> Drop(Guid device, CancellationToken cancel = default);

    Task Seen(Guid device, DateTimeOffset at, CancellationToken cancel = default);
}
