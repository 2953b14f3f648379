using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>The hole in the main on paper laid on its outside: x along the main towards the throat, y round it.</summary>
public static class HoleTemplate
{
    const double Border = 15;

    /// <param name="radius">Of the branch surface that the hole follows, mm.</param>
    public static Piece Of(AskedSaddle asked, double radius)
    {
        var paper = asked.Wrapping.Paper;
        var stretch = asked.Main.Radius is { } main ? 1 + paper / (2 * main) : 1;
        var points = Follow.Curve(t => At(asked, radius, t) is var p ? new Vec2(p.X, p.Y * stretch) : default, 0, Math.Tau, asked.Wrapping.Stations, asked.Error);
        var edge = points[..^1];
        var (low, high) = (new Vec2(edge.Min(p => p.X) - Border, edge.Min(p => p.Y) - Border), new Vec2(edge.Max(p => p.X) + Border, edge.Max(p => p.Y) + Border));
        return new("hole template", paper, Loop.Of(low, new(high.X, low.Y), high, new(low.X, high.Y)))
        {
            Openings = [new CutOut("hole", Loop.Of(edge.AsSpan()))],
            Witnesses =
            [
                new("line along the main, facing the branch", [new(low.X, 0), new(high.X, 0)]),
                new("under the middle of the joint", [new(0, low.Y), new(0, high.Y)]),
                new("throat side", [new(high.X - Border / 2, 0)]),
            ],
            Notes = ["paper, printed side out, on the outside of the main"],
        };
    }

    /// <summary>Where the branch's surface at an angle meets the outside of the main, mm along it and round it.</summary>
    public static Vec2 At(AskedSaddle asked, double radius, double angle)
    {
        if (asked.Main.Radius is { } main)
        {
            var (along, round) = new AgainstTube(main, asked.Angle, asked.Offset).OnMain(radius, angle);
            return new(along, round);
        }
        var (s, c) = Math.SinCos(angle);
        return new(radius * c / Math.Sin(asked.Angle), radius * s);
    }

    /// <summary>Length of the joint on the outside, mm, by 720 chords: within 1e-5 of itself.</summary>
    public static double Length(AskedSaddle asked, double radius) =>
        Enumerable.Range(0, 720).Sum(k => At(asked, radius, Math.PI * k / 360).DistanceTo(At(asked, radius, Math.PI * (k + 1) / 360)));

    public static Listing Ordinates(AskedSaddle asked, double radius) => new("Points of the hole", ["station from the throat", "along the main", "round the main"],
        [.. Enumerable.Range(0, asked.Wrapping.Stations).Select(k =>
        {
            var p = At(asked, radius, Math.Tau * k / asked.Wrapping.Stations);
            return ImmutableArray.Create($"{k}", Say.Mm(p.X), Say.Mm(p.Y));
        })]);
}
