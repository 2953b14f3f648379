using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Forecast;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.FrontOffice.OrderWork;
using WitnessMark.FrontOffice.ReturnLoan;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>What the back room does: JSON in, JSON out, called by js/back-room.js on a thread of its own.</summary>
[SupportedOSPlatform("browser")]
public static partial class Work
{
    /// <summary>Shapes that fit a sample's readings as well, with and without the doubtful readings.</summary>
    [JSExport]
    public static string Mirrors(string sample)
    {
        var plan = Adjust.Solve(JsonSerializer.Deserialize(sample, WorkJson.Default.Sample)!);
        return JsonSerializer.Serialize(new OtherShapes(plan.Mirrors, plan.Believed.Mirrors), WorkJson.Default.OtherShapes);
    }

    /// <summary>What to be careful of in a sheet in space, other shapes that fit as well among it.</summary>
    [JSExport]
    public static string SolidCautions(string request) => Answers.Of(() =>
        JsonSerializer.Serialize(JsonSerializer.Deserialize(request, WorkJson.Default.SolidAsked)!.Cautions(), WorkJson.Default.ImmutableArrayString));

    /// <summary>Futures of the whole plan.</summary>
    [JSExport]
    public static string PlanFutures(string request) => Answers.Of(() =>
    {
        var asked = JsonSerializer.Deserialize(request, WorkJson.Default.FuturesAsked)!;
        var plan = new ForecastPlanRequest(asked.Plan.Input(), asked.Chances.Seed) { Futures = asked.Chances.Futures };
        return JsonSerializer.Serialize(ForecastPlan.Run(plan, new Told(0, 1)).Forecast, WorkJson.Default.PlanForecast);
    });

    /// <summary>A changed plan against the plan as it stands, future by future.</summary>
    [JSExport]
    public static string WhatIf(string request) => Answers.Of(() =>
    {
        var asked = JsonSerializer.Deserialize(request, WorkJson.Default.WhatIfAsked)!;
        var plan = Simulation.Of(asked.Plan.Input(), asked.Chances.Seed, asked.Chances.Futures).Run(progress: new Told(0, 0.5));
        var changed = Simulation.Of(asked.Changed.Input(), asked.Chances.Seed, asked.Chances.Futures).Run(progress: new Told(0.5, 0.5));
        return JsonSerializer.Serialize(WitnessMark.PlanningOffice.Futures.WhatIf.Of(asked.Words, plan.Courses, changed.Courses), WorkJson.Default.WhatIf);
    });

    /// <summary>Open jobs in the order of work, with expected days.</summary>
    [JSExport]
    public static string Order(string request) => Answers.Of(() =>
        JsonSerializer.Serialize(OrderWork.Run(JsonSerializer.Deserialize(request, WorkJson.Default.OrderAsked)!.Request(), TimeProvider.System, new Told(0, 1)), WorkJson.Default.OrderWorkResult));

    /// <summary>A typed shape worked out: pictures, tables, cautions.</summary>
    [JSExport]
    public static string Shape(string request) => Answers.Of(() =>
        JsonSerializer.Serialize(ShapeShown.Of(JsonSerializer.Deserialize(request, WorkJson.Default.ShapeAsked)!), WorkJson.Default.ShapeShown));

    /// <summary>A typed shape held against a finer reckoning, a sentence each.</summary>
    [JSExport]
    public static string CheckShape(string request) => Answers.Of(() =>
        JsonSerializer.Serialize(JsonSerializer.Deserialize(request, WorkJson.Default.ShapeAsked)!.Check(), WorkJson.Default.ImmutableArrayString));

    /// <summary>A typed shape laid on sheets, with its card and all its files.</summary>
    [JSExport]
    public static string PlanShape(string request) => Answers.Of(() =>
        JsonSerializer.Serialize(ShapePlan.Of(JsonSerializer.Deserialize(request, WorkJson.Default.ShapePlanAsked)!), WorkJson.Default.ShapePlan));

    /// <summary>What the draughtsman meant by a sample's plan.</summary>
    [JSExport]
    public static string Intent(string request) => Answers.Of(() =>
        JsonSerializer.Serialize(IntentFound.Of(JsonSerializer.Deserialize(request, WorkJson.Default.IntentAsked)!, new Told(0, 1)), WorkJson.Default.IntentFound));

    /// <summary>The shortest list of readings for a sketched part.</summary>
    [JSExport]
    public static string Taking(string request) => Answers.Of(() =>
        JsonSerializer.Serialize(JsonSerializer.Deserialize(request, WorkJson.Default.TakingAsked)!.List(), WorkJson.Default.TakingListReadingKind));

    /// <summary>Whether a borrowed sample may go back.</summary>
    [JSExport]
    public static string Loan(string request) => Answers.Of(() =>
        JsonSerializer.Serialize(ReturnLoan.Run(JsonSerializer.Deserialize(request, WorkJson.Default.LoanRequest)!).Standing, WorkJson.Default.LoanStanding));

    /// <summary>Everything measured of it, as files.</summary>
    [JSExport]
    public static string LoanFiles(string request) => Answers.Of(() =>
        JsonSerializer.Serialize(LoanPapers.Of(JsonSerializer.Deserialize(request, WorkJson.Default.LoanRequest)!), WorkJson.Default.LoanPapers));

    [JSImport("globalThis.tellShare")]
    static partial void TellShare(double share);

    /// <summary>Tells the page how far a part of the work has come, at most a hundred times.</summary>
    sealed class Told(double from, double part) : IProgress<double>
    {
        int _hundredths = -1;

        public void Report(double value)
        {
            var share = from + part * value;
            if ((int)(share * 100) == _hundredths) return;
            _hundredths = (int)(share * 100);
            TellShare(share);
        }
    }
}
