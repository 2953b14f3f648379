using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Orders;

/// <summary>A borrowed sample went back to its lender.</summary>
public sealed record GivenBack(
    Guid Id, Guid VehicleId, Guid SampleId, string Note, ImmutableArray<string> Pictures, DateTimeOffset At, string Device) : IFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("sample given back", SampleId) ?? Check.Short("note", Note) ?? Rows.Photographed(Pictures);
}
