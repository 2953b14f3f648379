using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.ComingApart;

/// <summary>
/// A part taken off, as it was when it came off. A part may have several such entries: what the later ones say counts, what they
/// leave out stays as it was, and all that had to come off before it count together (<see cref="OffParts"/>).
/// </summary>
/// <param name="Tag">Code or words on the tag tied to it; may be empty.</param>
/// <param name="Bag">Code or words on the bag its small parts went into; may be empty.</param>
/// <param name="WayRound">Which way it faced: "long lug to the rear".</param>
/// <param name="WitnessMarks">Where it rubbed, sat or was scribed.</param>
/// <param name="After">Parts that had to come off before it.</param>
public sealed record CameOff(
    Guid Id, Guid VehicleId, Guid PartId, DateTimeOffset At, string Device,
    ImmutableArray<string> Pictures, string Tag, string Bag,
    ImmutableArray<FastenerCount> Fasteners, ImmutableArray<ShimPack> Shims,
    string WayRound, string WitnessMarks, string Note, ImmutableArray<Guid> After) : IFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("part that came off", PartId) ?? Rows.Photographed(Pictures)
        ?? Check.Short("tag", Tag) ?? Check.Short("bag", Bag) ?? Check.Short("which way round", WayRound)
        ?? Check.Short("witness marks", WitnessMarks) ?? Check.Short("note", Note)
        ?? Rows.Each("fasteners", Fasteners, f => f.Wrong()) ?? Rows.Each("shims", Shims, s => s.Wrong())
        ?? Rows.Each("came off after", After, a => Rows.Pointed("part that came off before", a)
            ?? (a == PartId ? Refusal.Of("came off after", "itself", "name other parts, or none") : null));
}

/// <summary>Like fasteners of one part.</summary>
/// <param name="What">"bolt", "split pin", "clip".</param>
/// <param name="Thread">Made-to thread or size, as typed: <c>1/4 BSF</c>; may be empty.</param>
/// <param name="Length">Under the head, mm; null when not taken.</param>
/// <param name="Head">"hexagon, 0.445 AF"; may be empty.</param>
/// <param name="Wanted">How many there should be.</param>
/// <param name="Here">How many are in the bag.</param>
public sealed record FastenerCount(string What, string Thread, double? Length, string Head, int Wanted, int Here)
{
    public Refusal? Wrong() =>
        Check.Named("fastener", What) ?? Check.Short("thread", Thread) ?? Check.Short("head", Head)
        ?? (Length is not (null or (> 0 and < 10_000)) ? Refusal.Of($"length of {What}", $"{Length}", "give mm above 0, or leave it out") : null)
        ?? Rows.Counted($"number of {What} there should be", Wanted, 1) ?? Rows.Counted($"number of {What} that are here", Here);
}

/// <summary>Shims found in one place.</summary>
/// <param name="Where">"under the front left foot".</param>
/// <param name="Thickness">Of each, mm.</param>
public sealed record ShimPack(string Where, double Thickness, int Count)
{
    public Refusal? Wrong() =>
        Check.Named("place of the shims", Where)
        ?? (Thickness is not (> 0 and < 100) ? Refusal.Of($"thickness of the shims {Where}", $"{Thickness}", "give mm above 0 and below 100") : null)
        ?? Rows.Counted($"number of shims {Where}", Count, 1);
}
