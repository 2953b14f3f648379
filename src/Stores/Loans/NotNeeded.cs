using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Loans;

/// <summary>The person says that something still open on a sample need not be done before it goes back, and why.</summary>
/// <param name="Point">Which: the key that the list of open points gives it. A list that comes to say something else has another key.</param>
/// <param name="Words">What was open, as it read when this was decided.</param>
/// <param name="Reason">Never empty.</param>
/// <param name="Dropped">Taken back: the point is open again.</param>
public sealed record NotNeeded(Guid Id, Guid VehicleId, Guid SampleId, string Point, string Words, string Reason, bool Dropped) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("sample of the open point", SampleId) ?? Check.Named("open point", Point) ?? Check.Short("words of the open point", Words)
        ?? Check.Named("reason why it is not needed", Reason);
}
