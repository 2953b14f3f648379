using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Seeing;

/// <summary>What a camera is fitted to: eight sights of each square, two of each picked corner.</summary>
static class Sights
{
    /// <summary>Points that all sides' common scatter counts for beside a side's own. Cause: a short side's own scatter is half chance, and a lucky one must not outweigh all others.</summary>
    const double Common = 10;

    public static Sight[] Of(FoundTarget found, PrintScale print)
    {
        var sides = found.Squares.SelectMany(k => k.Square.Sides).ToArray();
        var common = sides.Sum(s => s.Points * s.Std * s.Std) / sides.Sum(s => s.Points);
        return [.. found.Squares.SelectMany(k => OfSquare(found.Target, k, print, common))];
    }

    public static Sight[] Of(IReadOnlyList<Tie> corners, PrintScale print, double std) =>
        [.. corners.SelectMany((c, i) => new[]
        {
            new Sight(i, Printed(c.Mm, print), Vec2.Zero, c.Px, new(1, 0), std), new Sight(i, Printed(c.Mm, print), Vec2.Zero, c.Px, new(0, 1), std),
        })];

    /// <summary>Where a drawn place is on the print, mm.</summary>
    public static Vec2 Printed(Vec2 mm, PrintScale print) => new(mm.X * print.X.Value, mm.Y * print.Y.Value);

    static IEnumerable<Sight> OfSquare(Target target, Known known, PrintScale print, double common)
    {
        var corners = target.Corners(known.Index);
        for (var k = 0; k < 4; k++)
        {
            var side = known.Square.Sides[(k - known.Turn + 4) % 4];
            var (from, along) = (corners[k], (corners[(k + 1) % 4] - corners[k]).Unit);
            // A side runs anticlockwise: its outside lies to the right.
            var outward = -along.Left;
            var std = Math.Sqrt((side.Points * side.Std * side.Std + Common * common) / (side.Points + Common) * 2 / side.Points);
            foreach (var sign in new[] { -1, 1 })
            {
                var px = side.Middle + side.Along * (sign * side.Reach);
                // How far along the side: the square's own map is good enough, for only the distance across counts.
                var unit = Homography.Map(known.Square.Back, px);
                var share = Share(unit, (k - known.Turn + 4) % 4);
                yield return new(known.Index, Printed(from + along * (share * Target.Side), print), outward, px, side.Along.Left, std);
            }
        }
    }

    static double Share(Vec2 unit, int side) => 0.5 + side switch { 0 => unit.X, 1 => unit.Y, 2 => -unit.X, _ => -unit.Y };
}
