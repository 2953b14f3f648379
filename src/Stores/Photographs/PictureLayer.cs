using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Photographs;

/// <summary>What was drawn on a picture: a layer over it, under the id of its <see cref="PictureTaken"/>. The picture stays as it is.</summary>
/// <param name="Strokes">JSON of the strokes; empty when all were rubbed out.</param>
public sealed record PictureLayer(Guid Id, Guid VehicleId, string Strokes) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this)
        ?? (Strokes is null ? Refusal.Of("strokes", null, "send their text, which may be empty") : Check.TooLong("strokes on the picture", Strokes));
}
