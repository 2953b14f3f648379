using System.Collections.Immutable;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Stores.ComingApart;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.FrontOffice.PutTogether;

/// <summary>In which order the parts go back, what can go on now, and what is not here.</summary>
/// <param name="Done">Parts that are back on for good.</param>
/// <param name="Missing">A sentence for each sort of fastener that is short, worst first.</param>
public sealed record PutTogetherResult(RefitPlan Plan, ImmutableHashSet<Guid> Done, ImmutableArray<string> Missing)
{
    public ImmutableArray<RefitStep> Ready => [.. Plan.Ready(Done)];

    /// <summary>Common practice.</summary>
    public static ImmutableArray<string> Cautions { get; } =
    [
        "The order says what waits for what, not how tight: torques, new locking tabs, split pins and gaskets are in the maker's sheets.",
        "Brakes, steering and suspension: have a competent person check the finished work before the vehicle moves.",
    ];
}

/// <summary>The refit order of a vehicle, or of a typed list.</summary>
public static class PutTogether
{
    /// <param name="list">See <see cref="RefitTable"/>; UTF-8.</param>
    /// <exception cref="RefusedException">It is no such list.</exception>
    public static PutTogetherResult Read(ReadOnlySpan<byte> list) => new(RefitTable.Read(TextFile.Decode(list)), [], []);

    /// <summary>What the records say of a vehicle.</summary>
    public static async Task<PutTogetherResult> Open(VehicleTree tree, IStoresDesk desk, CancellationToken stop = default)
    {
        var vehicle = tree.Vehicle.Row.Id;
        var names = tree.Parts.ToDictionary(p => p.Row.Id, p => p.Row.Hand == Hand.None ? p.Row.Name : $"{p.Row.Name} {p.Row.Hand}");
        return Of(await desk.CameOff.Of(vehicle, stop), [.. (await desk.Precedences.Of(vehicle, stop)).Select(p => p.Row)],
            await desk.PutBack.Of(vehicle, stop), id => names.GetValueOrDefault(id, "part no longer listed"));
    }

    /// <param name="off">Those that stand, in the order they arrived.</param>
    /// <param name="back">A part that came off again later is not done.</param>
    public static PutTogetherResult Of(
        IEnumerable<CameOff> off, ImmutableArray<MustPrecede> precedences, IEnumerable<PutBack> back, Func<Guid, string> nameOf)
    {
        var parts = OffParts.Of(off);
        var offAt = parts.ToDictionary(p => p.PartId, p => p.OffAt);
        var done = back.Where(b => !offAt.TryGetValue(b.PartId, out var at) || b.At > at).Select(b => b.PartId).ToImmutableHashSet();
        return new(RefitOrder.Of(parts, precedences, nameOf), done, [.. Shortfall.Of(parts.Where(p => !done.Contains(p.PartId)), nameOf).Select(s => s.Words)]);
    }
}
