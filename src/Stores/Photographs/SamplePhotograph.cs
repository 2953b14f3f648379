using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Photographs;

/// <summary>A photograph of a sample beside the target sheet, and what the person has pointed out in it.</summary>
/// <param name="Name">Names the readings' frame too: picks of one photograph share its shift, turn and scale.</param>
/// <param name="Picture">The id it is kept under (<see cref="IPictureStore"/>); the picture itself is never altered.</param>
/// <param name="Work">JSON of the paper, the check lines, the thickness, the corners and the places picked; kept even while it cannot be read.</param>
/// <param name="Dropped">Taken off the list; kept so that it can be put back.</param>
public sealed record SamplePhotograph(Guid Id, Guid VehicleId, Guid SampleId, string Name, string Picture, string Work, bool Dropped) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("sample of the photograph", SampleId) ?? Check.Named("photograph's name", Name)
        ?? (PictureKind.IsId(Picture) ? null : Refusal.Of("picture", Picture, "give the id that the picture was kept under"))
        ?? (Work is null ? Refusal.Of("work on the photograph", null, "send its text, which may be empty") : Check.TooLong("work on the photograph", Work));
}
