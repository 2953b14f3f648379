using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.FrontOffice.TakeSample;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>A sketched part of which the shortest list of readings is wanted.</summary>
/// <param name="WantedPlusMinus">± that every dimension is to have (19 of 20), mm.</param>
/// <param name="Tools">What is in the box, as typed.</param>
public sealed record TakingAsked(Sample Sample, double WantedPlusMinus, string Tools = TakingAsked.UsualTools)
{
    public const string UsualTools = "calliper 150, tape, radius gauge, protractor";

    /// <exception cref="RefusedException">A tool is not known, or a feature has no rough place.</exception>
    public TakingList<ReadingKind> List() => TakeSample.Run(new(Sample) { WantedPlusMinus = WantedPlusMinus, Tools = TakeSample.ToolsOf(Tools) }).List;
}
