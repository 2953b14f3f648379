using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.FindIntent;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Screen;
using WitnessMark.Web.Client.DrawingOffice.Sheets;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>A sample whose plan is to be searched for what the draughtsman meant.</summary>
/// <param name="Origin">Where the vehicle comes from, by name.</param>
/// <param name="Refused">Keys of the findings that are not to be taken.</param>
/// <param name="Forced">Keys of those that are to hold.</param>
/// <param name="Wishes">How its drawing is to be written.</param>
/// <param name="Name">File names begin with it.</param>
public sealed record IntentAsked(
    Sample Sample, string Origin, ImmutableArray<string> Refused, ImmutableArray<string> Forced, TitleFields Title, SheetWishes Wishes, string Name, DateTimeOffset Now)
{
    public IntentWish Wish() => new() { Refused = Refused, Forced = Forced, Prior = Origins.Named(Origin) ?? OriginPrior.Unknown };
}

/// <summary>What was found, as far as a page shows it.</summary>
/// <param name="Words">The verdict in a sentence or two.</param>
/// <param name="Drawing">The first sheet as SVG; null where it cannot be drawn.</param>
/// <param name="WhyNot">Why there is no drawing.</param>
public sealed record IntentFound(
    string Words, ImmutableArray<Finding> Findings, ImmutableArray<Undecided> Undecided, ImmutableArray<string> Cautions, string? Drawing, string? WhyNot, ImmutableArray<PrintOut> Files)
{
    /// <exception cref="RefusedException">The plan has not settled or is too large.</exception>
    public static IntentFound Of(IntentAsked asked, IProgress<double> told)
    {
        var plan = Adjust.Solve(asked.Sample, searchMirrors: false);
        var result = FindIntent.Run(new(asked.Sample, plan) { Wish = asked.Wish() }, new Share(told));
        var found = new IntentFound(result.Intent.Words, result.Intent.Findings, result.Intent.Undecided, result.Cautions, null, null, []);
        try
        {
            var drawn = FindIntent.Draw(result, asked.Title, asked.Wishes.Style) with { Name = asked.Name };
            return found with { Cautions = drawn.Cautions, Drawing = Svg.Write(drawn.Drawing.Sheets[0]), Files = [.. drawn.Files(asked.Wishes.PrintPaper, asked.Now)] };
        }
        catch (RefusedException e)
        {
            return found with { WhyNot = e.Message };
        }
    }

    sealed class Share(IProgress<double> told) : IProgress<IntentProgress>
    {
        public void Report(IntentProgress value) => told.Report(value.Of > 0 ? Math.Min(1, (double)value.Done / value.Of) : 0);
    }
}
