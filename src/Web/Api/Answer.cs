using System.Text.Json;
using WitnessMark.Maths;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Hosting;

namespace WitnessMark.Web.Api;

/// <summary>Turns faults of a request into one sentence: 400 what was refused, 409 a clash, 413 too large, 507 no room on the disk.</summary>
static class Answer
{
    public static void UseAnswers(this WebApplication app) => app.Use(async (context, next) =>
    {
        try
        {
            await next();
        }
        catch (RefusedException e)
        {
            // A full disk is no fault of what was sent: the page sends it again later.
            await (DiskFaults.Tells(e) ? Refuse(context, StatusCodes.Status507InsufficientStorage, DiskFaults.Sentence) : Refuse(context, StatusCodes.Status400BadRequest, e.Message));
        }
        catch (BadHttpRequestException e) when (e.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            await Refuse(context, e.StatusCode, "The request is too large; send less at once.");
        }
        catch (Exception e) when (DiskFaults.Tells(e))
        {
            await Refuse(context, StatusCodes.Status507InsufficientStorage, DiskFaults.Sentence);
        }
        catch (BadHttpRequestException e)
        {
            await Refuse(context, e.StatusCode, e.InnerException is JsonException json ? Where(json) : "The request could not be read; send JSON as the page does.");
        }
    });

    /// <summary>The row, or 404 with a sentence.</summary>
    public static IResult Found<T>(T? row, string what) where T : class =>
        row is null ? Results.Json(new Refused($"There is no such {what}."), statusCode: StatusCodes.Status404NotFound) : Results.Ok(row);

    /// <summary>The saved row, or 409 with the one that stands.</summary>
    public static IResult Saved<T>(Stores.Saved<T> saved) =>
        Results.Json(saved, statusCode: StatusOf(saved));

    public static int StatusOf<T>(Stores.Saved<T> saved) => saved.Clash ? StatusCodes.Status409Conflict : StatusCodes.Status200OK;

    static Task Refuse(HttpContext context, int status, string sentence) =>
        Results.Json(new Refused(sentence), statusCode: status).ExecuteAsync(context);

    static string Where(JsonException e) =>
        $"The JSON is broken at line {e.LineNumber + 1}, byte {e.BytePositionInLine + 1}{(e.Path is { Length: > 1 } path ? $", field {path.TrimStart('$', '.')}" : "")}; send it whole and with the right kinds of value.";
}
