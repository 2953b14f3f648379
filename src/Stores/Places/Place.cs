using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Places;

public enum PlaceKind { Building, Shelf, Bin, Box, Bag, Hook, Vehicle, Elsewhere }

/// <summary>Somewhere a part can lie: a shelf in the shed, a bin on the shelf.</summary>
/// <param name="Label">As written on it: "B3".</param>
/// <param name="Inside">The place that holds it; null at the top.</param>
public sealed record Place(Guid Id, Guid VehicleId, PlaceKind Kind, string Label, Guid? Inside, string Notes) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Check.Known("kind of place", Kind) ?? Check.Named("place's label", Label) ?? Check.Short("notes", Notes)
        ?? (Inside == Id ? Refusal.Of("place", Label, "a place cannot lie inside itself") : null);
}

/// <summary>A part was put somewhere.</summary>
/// <param name="PlaceId">Null: taken out and not put down anywhere known.</param>
public sealed record Moved(Guid Id, Guid VehicleId, Guid PartId, Guid? PlaceId, string Note, DateTimeOffset At, string Device) : IFact
{
    public Refusal? Wrong() => Rows.Wrong(this) ?? Rows.Pointed("part moved", PartId) ?? Check.Short("note", Note);
}
