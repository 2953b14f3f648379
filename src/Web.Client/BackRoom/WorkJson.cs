using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.FrontOffice.MeasurePhoto;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.OrderWork;
using WitnessMark.FrontOffice.ReturnLoan;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>Second shapes of the whole plan and of the plan that is believed.</summary>
public sealed record OtherShapes(ImmutableArray<Mirror> All, ImmutableArray<Mirror> Believed)
{
    public Plan Into(Plan plan) => plan with { Mirrors = All, WithoutDoubtful = plan.WithoutDoubtful is { } kept ? kept with { Mirrors = Believed } : null };
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, IgnoreReadOnlyProperties = true)]
[JsonSerializable(typeof(Sample))]
[JsonSerializable(typeof(OtherShapes))]
[JsonSerializable(typeof(FuturesAsked))]
[JsonSerializable(typeof(PlanForecast))]
[JsonSerializable(typeof(OrderAsked))]
[JsonSerializable(typeof(OrderWorkResult))]
[JsonSerializable(typeof(WhatIfAsked))]
[JsonSerializable(typeof(WhatIf))]
[JsonSerializable(typeof(IntentAsked))]
[JsonSerializable(typeof(IntentFound))]
[JsonSerializable(typeof(TakingAsked))]
[JsonSerializable(typeof(TakingList<ReadingKind>))]
[JsonSerializable(typeof(LoanRequest))]
[JsonSerializable(typeof(LoanStanding))]
[JsonSerializable(typeof(LoanPapers))]
[JsonSerializable(typeof(ShapeAsked))]
[JsonSerializable(typeof(ShapeShown))]
[JsonSerializable(typeof(ImmutableArray<string>))]
[JsonSerializable(typeof(SolidAsked))]
[JsonSerializable(typeof(ShapePlanAsked))]
[JsonSerializable(typeof(ShapePlan))]
[JsonSerializable(typeof(PhotoSize))]
[JsonSerializable(typeof(PhotoTrueAsked))]
[JsonSerializable(typeof(PhotoShown))]
[JsonSerializable(typeof(PickAsked))]
[JsonSerializable(typeof(PickAnswer))]
[JsonSerializable(typeof(ImmutableArray<Vec2>))]
sealed partial class WorkJson : JsonSerializerContext;
