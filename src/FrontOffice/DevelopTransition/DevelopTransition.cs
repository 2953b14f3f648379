using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.DevelopTransition;

/// <summary>From a cone, transition, elbow or cut tube as it is typed to the kit that makes it.</summary>
public static class DevelopTransition
{
    /// <param name="bytes">UTF-8, at most 16 MB.</param>
    public static Parsed<Asked> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return TransitionJson.Read(TextFile.Decode(bytes));
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    /// <returns>The kit with its cautions and how true it is, or why there is none.</returns>
    public static Parsed<Made> Run(Asked asked) => Made.Of(asked);
}
