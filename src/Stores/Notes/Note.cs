using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Notes;

/// <summary>Something worth writing down, of one part or of the whole vehicle.</summary>
/// <param name="PartId">Null when it is about the vehicle.</param>
public sealed record Note(Guid Id, Guid VehicleId, Guid? PartId, string Words, DateTimeOffset At, string Device) : IPartFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Check.Named("note", Words)
        ?? (PartId == Guid.Empty ? Refusal.Of("part of the note", null, "choose one, or leave it out") : null);
}
