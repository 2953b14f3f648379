using WitnessMark.Maths;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>A refusal crosses from the back room as an answer that begins so; JSON never does.</summary>
static class Answers
{
    const string Refused = "refused:";

    public static string Of(Func<string> work)
    {
        try
        {
            return work();
        }
        catch (RefusedException e)
        {
            return Refused + e.Message;
        }
    }

    /// <exception cref="RefusedException">The work was refused.</exception>
    public static string Read(string answer) =>
        answer.StartsWith(Refused, StringComparison.Ordinal) ? throw new RefusedException(new(answer[Refused.Length..])) : answer;
}
