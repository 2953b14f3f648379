using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Photographs;

/// <summary>Two pictures of one thing, before and after, by the ids of their <see cref="PictureTaken"/>.</summary>
/// <param name="Dropped">No longer a pair; kept so that it can be put back.</param>
public sealed record PicturePair(Guid Id, Guid VehicleId, Guid? PartId, Guid Before, Guid After, string Words, bool Dropped) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("picture before", Before) ?? Rows.Pointed("picture after", After) ?? Check.Short("words of the pair", Words)
        ?? (Before == After ? Refusal.Of("picture after", "the same picture", "choose another than the one before") : null);
}
