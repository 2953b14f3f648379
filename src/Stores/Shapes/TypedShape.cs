using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Shapes;

/// <summary>A shape to be made for a part, as a person types it: a rail, a transition, a bead, a setting tool.</summary>
/// <param name="Kind">One word that says how the text is to be read.</param>
/// <param name="Name">What it is called among the part's shapes.</param>
/// <param name="Text">JSON as typed; kept even while it cannot be read.</param>
/// <param name="Dropped">Taken off the list; kept so that it can be put back.</param>
public sealed record TypedShape(Guid Id, Guid VehicleId, Guid PartId, string Kind, string Name, string Text, bool Dropped) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("part of the shape", PartId) ?? Check.Named("kind of shape", Kind) ?? Check.Named("shape's name", Name)
        ?? (Text is null ? Refusal.Of("shape", null, "send its text, which may be empty") : Check.TooLong("shape", Text));
}
