using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>A V cut into a flange on the blank so that it can be drawn together.</summary>
/// <param name="Along">Of its middle, along the fold, mm.</param>
/// <param name="Half">Half its width, measured along the fold, mm.</param>
readonly record struct Notch(double Along, double Half);

/// <summary>Walks an edge of the blank with all that hangs on it.</summary>
static class RailOutline
{
    /// <summary>Chord error where a width changes along an arc, mm; straights and even arcs are exact.</summary>
    public const double ChordError = 0.01;

    const double Same = 1e-9;

    /// <summary>Line at a distance from the fold on the blank, from the first station to the last; corners with their bulges.</summary>
    /// <param name="flat">Distance from the web's tangent line at a place along the fold, mm.</param>
    /// <param name="cut">Open the corners that the blank has open; else run past them.</param>
    public static List<Corner> Beside(FoldEdge edge, Func<double, double> flat, bool cut, IReadOnlyList<Notch> notches)
    {
        var corners = new List<Corner>();
        Vec2? start = null;
        for (var i = 0; i < edge.Parts.Length; i++)
        {
            var part = edge.Parts[i];
            var from = part.From;
            // A notch may reach over the end of a part: what is left of it is cut from the next.
            foreach (var n in notches)
            {
                if (n.Along + n.Half <= part.From || n.Along - n.Half >= part.To) continue;
                if (n.Along - n.Half > from) Run(corners, edge, part, from, n.Along - n.Half, flat, start);
                start = null;
                if (n.Along >= part.From && n.Along < part.To) Add(corners, edge.Place(n.Along, part.Step) is var p ? p.At + p.Out * edge.Shape!.Allowance : default);
                from = n.Along + n.Half;
            }
            if (from < part.To) Run(corners, edge, part, from, part.To, flat, start);
            start = i + 1 < edge.Parts.Length && edge.Parts[i + 1].Step != part.Step ? Corner(corners, edge, part, edge.Parts[i + 1], flat, cut) : null;
        }
        return corners;
    }

    static void Run(List<Corner> corners, FoldEdge edge, EdgePart part, double from, double to, Func<double, double> flat, Vec2? start)
    {
        var (y0, y1) = (flat(from), flat(to));
        var curvature = edge.Line.Steps[part.Step].Curvature;
        var sweep = curvature * (to - from);
        if (curvature == 0 || Math.Abs(y1 - y0) < Same)
        {
            Add(corners, start ?? At(edge, part.Step, from, y0), curvature == 0 ? 0 : Math.Tan(sweep / 4));
            Add(corners, At(edge, part.Step, to, y1));
            return;
        }
        var n = Arc.Chords(1 / Math.Abs(curvature) + Math.Max(y0, y1), sweep, ChordError);
        for (var k = 0; k <= n; k++)
            if (from + (to - from) * k / n is var along) Add(corners, k == 0 && start is { } s ? s : At(edge, part.Step, along, flat(along)));
    }

    /// <summary>Between two steps: nothing where they run on; a V open to the fold where the flange's runs part on the blank; a mitre where they would lap.</summary>
    /// <returns>Where the next run begins, when not at its own end.</returns>
    static Vec2? Corner(List<Corner> corners, FoldEdge edge, EdgePart before, EdgePart after, Func<double, double> flat, bool cut)
    {
        var (a, b) = (edge.Place(before.To, before.Step), edge.Place(after.From, after.Step));
        var turn = a.Out.Cross(b.Out);
        if (Math.Abs(turn) < 1e-9) return null;
        var opens = edge.Upper ? turn < 0 : turn > 0;
        if (opens && cut)
        {
            Add(corners, b.At);
            return null;
        }
        var mitre = a.At + (a.Out + b.Out) * (flat(before.To) / (1 + a.Out.Dot(b.Out)));
        corners[^1] = new(mitre);
        return mitre;
    }

    static Vec2 At(FoldEdge edge, int step, double along, double flat) => edge.Place(along, step) is var p ? p.At + p.Out * flat : default;

    static void Add(List<Corner> corners, Vec2 at, double bulge = 0)
    {
        if (corners.Count > 0 && corners[^1].At.DistanceTo(at) <= Same) corners[^1] = new(corners[^1].At, bulge);
        else corners.Add(new(at, bulge));
    }

    /// <summary>At a rail's ends the web's end line and those of its flanges meet at a small angle where an edge tapers: puts the corner in.</summary>
    public static void AddFeet(FoldEdge lower, List<Corner> low, FoldEdge upper, List<Corner> high)
    {
        var (a, b) = (lower.Line.At(0), upper.Line.At(0));
        var (c, d) = (lower.Line.Steps[^1].To, upper.Line.Steps[^1].To);
        var (lowStart, highStart, lowEnd, highEnd) = (low[0].At, high[0].At, low[^1].At, high[^1].At);
        if (Plane2.Distance(a, lowStart, b) > Same) low.Insert(0, new(a));
        if (Plane2.Distance(c, lowEnd, d) > Same) low.Add(new(c));
        if (Plane2.Distance(b, highStart, a) > Same) high.Insert(0, new(b));
        if (Plane2.Distance(d, highEnd, c) > Same) high.Add(new(d));
    }

    /// <summary>One closed outline, anticlockwise, from the lower and the upper line, both from the first station to the last.</summary>
    public static Loop Closed(List<Corner> lower, List<Corner> upper)
    {
        var all = new List<Corner>(lower.Count + upper.Count);
        foreach (var c in lower) Add(all, c.At, c.Bulge);
        for (var k = upper.Count - 1; k >= 0; k--) Add(all, upper[k].At, k > 0 ? -upper[k - 1].Bulge : 0);
        if (all[0].At.DistanceTo(all[^1].At) <= Same) all.RemoveAt(all.Count - 1);
        return new([.. all]);
    }

    /// <summary>Points of the line by chords.</summary>
    public static ImmutableArray<Vec2> Points(List<Corner> corners)
    {
        var points = ImmutableArray.CreateBuilder<Vec2>();
        for (var k = 0; k < corners.Count; k++)
        {
            points.Add(corners[k].At);
            if (k + 1 < corners.Count && corners[k].Bulge != 0) Arc.Of(corners[k].At, corners[k + 1].At, corners[k].Bulge).AddBetween(points, ChordError);
        }
        return points.ToImmutable();
    }
}
