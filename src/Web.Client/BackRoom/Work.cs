using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Forecast;

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

    /// <summary>Futures of the jobs still open.</summary>
    [JSExport]
    public static string Futures(string request) =>
        JsonSerializer.Serialize(Forecast.Run(JsonSerializer.Deserialize(request, WorkJson.Default.ForecastRequest)!), WorkJson.Default.JobForecast);
}
