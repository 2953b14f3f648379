using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.FrontOffice.TakeSample;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>A sketched part of which the shortest list of readings is wanted.</summary>
/// <param name="WantedPlusMinus">± that every dimension is to have (19 of 20), mm.</param>
public sealed record TakingAsked(Sample Sample, double WantedPlusMinus)
{
    public TakingList List() => TakeSample.Run(new(Sample) { WantedPlusMinus = WantedPlusMinus }).List;
}
