using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Tables;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>Parallel, square and other usual angles between edges and slots.</summary>
static class Directions
{
    /// <summary>rad. Cause: a direction further off than this was not meant so on any part that is still in use.</summary>
    const double Near = 4 * Math.PI / 180;

    // Shares of parallel and square among pairs of directions: common practice; the other angles share the ladder of degrees.
    const double Plain = 0.4;

    public static IEnumerable<Hypothesis> Of(Shape shape)
    {
        var all = shape.Directed;
        for (var i = 0; i < all.Length; i++)
            for (var k = i + 1; k < all.Length; k++)
            {
                if (shape.EndsIn(all[i], all[k]) || shape.EndsIn(all[k], all[i])) continue;
                foreach (var h in Pair(shape, all[i], all[k])) yield return h;
            }
    }

    static IEnumerable<Hypothesis> Pair(Shape shape, int a, int b)
    {
        var between = Math.IEEERemainder(shape.Turn(b, shape.Start) - shape.Turn(a, shape.Start), Math.PI);
        if (Math.Abs(between) < Near) yield return new(PatternKind.Parallel, [a, b], [Apart(shape, a, b, 0, Math.Log(Math.PI * Plain))], 0);
        if (Math.PI / 2 - Math.Abs(between) < Near) yield return new(PatternKind.Square, [a, b], [Apart(shape, a, b, Math.PI / 2, Math.Log(Math.PI * Plain))], 0);
        foreach (var step in Ladder.HalfDegrees(Math.PI / 36, Math.PI / 2 - Math.PI / 36))
        {
            var degrees = step.Size * 180 / Math.PI;
            if (Math.Abs(degrees - 5 * Math.Round(degrees / 5)) > 1e-9 || Math.Abs(Math.Abs(between) - step.Size) > Near / 2) continue;
            // The ladder's mass is by the logarithm of size; times the size it is a stretch in radians.
            yield return new(PatternKind.SetAngle, [a, b], [Apart(shape, a, b, Math.Sign(between) * step.Size, Math.Log(step.Mass * step.Size))], 0)
            {
                Nominal = new(step.Size, step.Name, step.Series),
            };
        }
    }

    public static Tie Apart(Shape shape, int a, int b, double angle, double logRange) =>
        new([a, b], logRange, x => Math.IEEERemainder(shape.Turn(b, x) - shape.Turn(a, x) - angle, Math.PI));
}
