using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Photographs;

/// <summary>
/// Better words for a picture, or another part: the newest that stands counts, and what was said before stays on record. The
/// picture keeps its id, so that what is drawn on it and its pairs stay with it.
/// </summary>
/// <param name="PictureId">Of the <see cref="PictureTaken"/>.</param>
/// <param name="PartId">Null when it shows the vehicle.</param>
public sealed record PictureSaid(Guid Id, Guid VehicleId, Guid PictureId, Guid? PartId, string Words, DateTimeOffset At, string Device) : IPartFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("picture", PictureId) ?? Check.Short("words of the picture", Words)
        ?? (PartId == Guid.Empty ? Refusal.Of("part of the picture", null, "choose one, or leave it out") : null);
}
