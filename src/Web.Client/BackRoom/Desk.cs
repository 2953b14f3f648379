using System.Collections.Immutable;
using System.Text.Json;
using Microsoft.JSInterop;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.OrderWork;
using WitnessMark.FrontOffice.ReturnLoan;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>
/// Work that may take longer than a breath goes to the back room, a second runtime on a thread of its own: the page stays quick,
/// and stopping is at once (the thread is ended).
/// </summary>
public sealed class Desk(PageScript page)
{
    /// <summary>A page's own short questions; and the works of <see cref="Shell.Works.LongWork"/>, which outlive their page.</summary>
    const string Short = "short", Long = "long";

    public async Task<OtherShapes> OtherShapes(Sample sample, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.Mirrors), JsonSerializer.Serialize(sample, WorkJson.Default.Sample), stop), WorkJson.Default.OtherShapes)!;

    public async Task<ImmutableArray<string>> SolidCautions(SolidAsked asked, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.SolidCautions), JsonSerializer.Serialize(asked, WorkJson.Default.SolidAsked), stop), WorkJson.Default.ImmutableArrayString);

    /// <param name="told">Told the share done, 0 to 1.</param>
    public async Task<PlanForecast> PlanFutures(FuturesAsked asked, Action<double> told, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.PlanFutures), JsonSerializer.Serialize(asked, WorkJson.Default.FuturesAsked), stop, told, Long), WorkJson.Default.PlanForecast)!;

    /// <param name="told">Told the share done, 0 to 1.</param>
    public async Task<WhatIf> WhatIf(WhatIfAsked asked, Action<double> told, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.WhatIf), JsonSerializer.Serialize(asked, WorkJson.Default.WhatIfAsked), stop, told, Long), WorkJson.Default.WhatIf)!;

    /// <param name="told">Told the share done, 0 to 1.</param>
    public async Task<OrderWorkResult> Order(OrderAsked asked, Action<double> told, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.Order), JsonSerializer.Serialize(asked, WorkJson.Default.OrderAsked), stop, told, Long), WorkJson.Default.OrderWorkResult)!;

    public async Task<ShapeShown> Shape(ShapeAsked asked, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.Shape), JsonSerializer.Serialize(asked, WorkJson.Default.ShapeAsked), stop), WorkJson.Default.ShapeShown)!;

    public async Task<ImmutableArray<string>> CheckShape(ShapeAsked asked, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.CheckShape), JsonSerializer.Serialize(asked, WorkJson.Default.ShapeAsked), stop, room: Long), WorkJson.Default.ImmutableArrayString);

    public async Task<ShapePlan> PlanShape(ShapePlanAsked asked, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.PlanShape), JsonSerializer.Serialize(asked, WorkJson.Default.ShapePlanAsked), stop), WorkJson.Default.ShapePlan)!;

    /// <param name="told">Told the share done, 0 to 1.</param>
    public async Task<IntentFound> Intent(IntentAsked asked, Action<double> told, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.Intent), JsonSerializer.Serialize(asked, WorkJson.Default.IntentAsked), stop, told, Long), WorkJson.Default.IntentFound)!;

    public async Task<TakingList<ReadingKind>> Taking(TakingAsked asked, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.Taking), JsonSerializer.Serialize(asked, WorkJson.Default.TakingAsked), stop), WorkJson.Default.TakingListReadingKind)!;

    public async Task<LoanStanding> Loan(LoanRequest asked, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.Loan), JsonSerializer.Serialize(asked, WorkJson.Default.LoanRequest), stop), WorkJson.Default.LoanStanding)!;

    public async Task<LoanPapers> LoanPapers(LoanRequest asked, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.LoanFiles), JsonSerializer.Serialize(asked, WorkJson.Default.LoanRequest), stop), WorkJson.Default.LoanPapers)!;

    /// <exception cref="OperationCanceledException">Stopped, by this or another caller.</exception>
    /// <exception cref="RefusedException">The work was refused.</exception>
    internal async Task<string> Ask(string task, string text, CancellationToken stop, Action<double>? told = null, string room = Short, IJSObjectReference? bytes = null)
    {
        await using var stopping = stop.Register(() => page.CloseBackRoom(room));
        using var listener = told is null ? null : DotNetObjectReference.Create(new Listener(told));
        try
        {
            return Answers.Read(await page.AskBackRoom(room, task, text, listener, bytes));
        }
        catch (JSException e) when (e.Message.Contains("stopped"))
        {
            throw new OperationCanceledException(e.Message, e, stop);
        }
    }

    sealed class Listener(Action<double> told)
    {
        [JSInvokable]
        public void Told(double share) => told(share);
    }
}
