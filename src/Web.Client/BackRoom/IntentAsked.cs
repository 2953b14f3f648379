using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MakeToSize;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>A sample whose plan is to be searched for what the draughtsman meant.</summary>
/// <param name="Origin">Where the vehicle comes from, by name.</param>
/// <param name="Refused">Keys of the findings that are not to be taken.</param>
/// <param name="Forced">Keys of those that are to hold.</param>
public sealed record IntentAsked(Sample Sample, string Origin, ImmutableArray<string> Refused, ImmutableArray<string> Forced)
{
    public IntentWish Wish => new() { Refused = Refused, Forced = Forced, Prior = Origins.Named(Origin) ?? OriginPrior.Unknown };
}

/// <summary>What was found, as far as a page shows it.</summary>
/// <param name="Words">The verdict in a sentence or two.</param>
public sealed record IntentFound(string Words, ImmutableArray<Finding> Findings, ImmutableArray<Undecided> Undecided, ImmutableArray<OriginOdds> Origins, ImmutableArray<string> Cautions)
{
    public static IntentFound Of(IntentAsked asked, IProgress<double> told)
    {
        var plan = Adjust.Solve(asked.Sample, searchMirrors: false);
        var found = Intention.Find(plan, asked.Wish, new Share(told));
        return new(found.Words, found.Findings, found.Undecided, found.Origins, found.Cautions);
    }

    sealed class Share(IProgress<double> told) : IProgress<IntentProgress>
    {
        public void Report(IntentProgress value) => told.Report(value.Of > 0 ? Math.Min(1, (double)value.Done / value.Of) : 0);
    }
}
