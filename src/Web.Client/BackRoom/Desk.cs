using System.Text.Json;
using Microsoft.JSInterop;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Forecast;
using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>
/// Work that may take longer than a breath goes to the back room, a second runtime on a thread of its own: the page stays quick,
/// and stopping is at once (the thread is ended).
/// </summary>
public sealed class Desk(PageScript page)
{
    public async Task<OtherShapes> OtherShapes(Sample sample, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.Mirrors), JsonSerializer.Serialize(sample, WorkJson.Default.Sample), stop), WorkJson.Default.OtherShapes)!;

    public async Task<JobForecast> Futures(ForecastRequest request, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Ask(nameof(Work.Futures), JsonSerializer.Serialize(request, WorkJson.Default.ForecastRequest), stop), WorkJson.Default.JobForecast)!;

    /// <exception cref="OperationCanceledException">Stopped, by this or another caller.</exception>
    async Task<string> Ask(string task, string text, CancellationToken stop)
    {
        await using var stopping = stop.Register(page.CloseBackRoom);
        try
        {
            return await page.AskBackRoom(task, text);
        }
        catch (JSException e) when (e.Message.Contains("stopped"))
        {
            throw new OperationCanceledException(e.Message, e, stop);
        }
    }
}
