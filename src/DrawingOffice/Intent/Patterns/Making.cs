using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns;

/// <summary>
/// How far a made part strays from its drawing, feature by feature, one standard deviation. It stands beside the ± of the
/// readings in every test, so that a hole drilled a tenth off its mark does not speak against the mark.
/// </summary>
/// <param name="Place">A hole, slot or arc centre, each way, mm.</param>
/// <param name="Corner">A corner or the end of an edge, each way, mm.</param>
/// <param name="Size">A diameter or slot width, mm.</param>
/// <param name="SizePerSize">More of it for each mm of size.</param>
/// <param name="Over">How much a drilled hole comes out over its drill, mm.</param>
/// <param name="Radius">An outline radius, mm; <paramref name="RadiusPerSize"/> more for each mm of it.</param>
/// <param name="Name">Named in the words: "marked out and drilled by hand".</param>
public sealed record Making(string Name, double Place, double Corner, double Size, double SizePerSize, double Over, double Radius, double RadiusPerSize)
{
    /// <summary>
    /// Common practice, the figures of <see cref="Practice.Usual"/> shared out to the features: two holes each 0.085 mm off
    /// stand 0.12 mm off each other; two corners each 0.106 mm off, 0.15 mm.
    /// </summary>
    public static Making ByHand { get; } = new("marked out and drilled by hand", 0.085, 0.106, 0.04, 0.001, 0.04, 0.1, 0.02);

    /// <summary>Pressed or drilled through a jig; common practice, about a third of the above.</summary>
    public static Making ByTool { get; } = new("pressed or drilled through a jig", 0.03, 0.05, 0.02, 0.0005, 0.02, 0.05, 0.01);

    /// <summary>Throws <see cref="RefusedException"/> when a figure cannot be.</summary>
    public Making Checked()
    {
        foreach (var (field, value) in ((string, double)[])[("place", Place), ("corner", Corner), ("size", Size), ("radius", Radius)])
            if (!(value is > 0 and < 5)) throw new RefusedException(Refusal.Of($"spread of making, {field}", $"{value}", "it must be above 0 and below 5 mm"));
        if (!(SizePerSize is >= 0 and < 0.1 && RadiusPerSize is >= 0 and < 0.5 && Over is >= 0 and < 1))
            throw new RefusedException(Refusal.Of("spread of making", $"{SizePerSize}, {RadiusPerSize}, {Over}", "shares must be from 0 to a tenth, and a hole at most 1 mm over its drill"));
        return this;
    }
}
