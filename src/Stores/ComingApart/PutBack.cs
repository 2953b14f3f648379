using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.ComingApart;

/// <summary>A part is back on the vehicle for good; a trial fit is none.</summary>
public sealed record PutBack(
    Guid Id, Guid VehicleId, Guid PartId, DateTimeOffset At, string Device, string Note, ImmutableArray<string> Pictures) : IFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("part put back", PartId) ?? Check.Short("note", Note) ?? Rows.Photographed(Pictures);
}

/// <summary>On the way back, one part goes on (or is aligned, finished, painted) before another, whatever the order they came off in.</summary>
/// <param name="Because">"the door is hung and gapped first".</param>
/// <param name="Lifted">True once it no longer holds.</param>
public sealed record MustPrecede(Guid Id, Guid VehicleId, Guid First, Guid Then, string Because, bool Lifted) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("part that goes first", First) ?? Rows.Pointed("part that goes after", Then)
        ?? (First == Then ? Refusal.Of("order", "a part before itself", "name two parts") : null) ?? Check.Named("reason for the order", Because);
}
