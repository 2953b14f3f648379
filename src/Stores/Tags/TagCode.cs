using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Tags;

/// <summary>What a tag hangs on.</summary>
public enum TagKind { Part, Place, Consignment, Bag }

/// <summary>A printed code and what it opens. The same code on two things is told, not hidden: see <see cref="TagBook"/>.</summary>
/// <param name="Code">As <see cref="TagSpelling"/> writes it, without the dash.</param>
/// <param name="Subject">Id of the part, place or consignment; for a bag, of the part it was filled from.</param>
/// <param name="Words">What stands beside the code on the label.</param>
public sealed record TagCode(
    Guid Id, Guid VehicleId, string Code, TagKind Kind, Guid Subject, string Words, DateTimeOffset At, string Device) : IFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? TagSpelling.Read(Code).Refusal ?? Check.Known("kind of tag", Kind) ?? Rows.Pointed("thing tagged", Subject) ?? Check.Short("words on the tag", Words);
}
