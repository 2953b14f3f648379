using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Photographs;

/// <summary>A picture of one part or of the whole vehicle.</summary>
/// <param name="PartId">Null when it shows the vehicle.</param>
/// <param name="Picture">The id it is kept under (<see cref="IPictureStore"/>); the picture itself is never altered.</param>
/// <param name="Words">What it shows; may be empty.</param>
public sealed record PictureTaken(Guid Id, Guid VehicleId, Guid? PartId, string Picture, string Words, DateTimeOffset At, string Device) : IPartFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Photographed([Picture ?? ""]) ?? Check.Short("words of the picture", Words)
        ?? (PartId == Guid.Empty ? Refusal.Of("part of the picture", null, "choose one, or leave it out") : null);
}
