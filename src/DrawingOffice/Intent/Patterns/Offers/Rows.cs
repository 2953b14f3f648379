using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>In line, equally spaced and evenly about a centre line, all along or across one frame.</summary>
static class Rows
{
    /// <summary>mm: further off than any making that this is meant for.</summary>
    const double Near = 1.2;

    static readonly bool[] Ways = [false, true];

    public static string About(Frame frame, bool across) => $"{(across ? "along" : "across")} {frame.Name}";

    /// <summary>Two features on one line.</summary>
    public static IEnumerable<Hypothesis> InLine(Frame frame, double[] x)
    {
        foreach (var across in Ways)
        {
            var all = frame.Standing(across).Select(f => (Feature: f, At: frame.Station(f, across, x))).OrderBy(s => s.At).ToList();
            for (var i = 0; i < all.Count; i++)
                for (var k = i + 1; k < all.Count && all[k].At - all[i].At < Near; k++)
                    if (Pair(frame, across, all[i].Feature, all[k].Feature, all.Count) is { } pair) yield return pair;
        }
    }

    static Hypothesis? Pair(Frame frame, bool across, int a, int b, int among)
    {
        var shape = frame.Shape;
        var (edges, onEdge) = (shape.Edges.Contains(a) ? a : b, shape.Edges.Contains(a) ^ shape.Edges.Contains(b));
        var other = edges == a ? b : a;
        if (onEdge && (shape.EndsIn(edges, other) || shape.Kind(other) == FeatureKind.Slot)) return null;
        int[] features = a < b ? [a, b] : [b, a];
        return new(onEdge ? PatternKind.OnEdge : PatternKind.InLine, onEdge ? [other, edges] : [.. features],
            [frame.Sum(across, 0, Range(shape), (a, 1), (b, -1))], -Math.Log(Math.Max(1, among - 1)))
        { About = About(frame, across), Across = across, Frame = frame };
    }

    /// <summary>Three marks of one row, the middle one half way.</summary>
    public static IEnumerable<Hypothesis> Spaced(Frame frame, double[] x)
    {
        foreach (var across in Ways)
        {
            var seen = new HashSet<(int, int, int)>();
            var stations = Station.Of(frame, across, x);
            var stationOf = stations.Index().SelectMany(s => s.Item.Members.Select(m => (m, s.Index))).ToDictionary(s => s.m, s => s.Index);
            foreach (var row in Station.Of(frame, !across, x))
            {
                var marks = row.Members.Where(frame.Shape.IsMark).OrderBy(m => stationOf[m]).ToList();
                for (var i = 0; i + 2 < marks.Count; i++)
                {
                    var (a, b, c) = (marks[i], marks[i + 1], marks[i + 2]);
                    if (!seen.Add((stationOf[a], stationOf[b], stationOf[c]))) continue;
                    if (Math.Abs(2 * stations[stationOf[b]].At - stations[stationOf[a]].At - stations[stationOf[c]].At) > Near) continue;
                    yield return new(PatternKind.EquallySpaced, [a, b, c], [frame.Sum(across, 0, Range(frame.Shape), (b, 2), (a, -1), (c, -1))], -Math.Log(2))
                    {
                        About = About(frame, !across),
                        Across = across,
                        Frame = frame,
                    };
                }
            }
        }
    }

    /// <summary>Two pairs of stations with one middle, or a station in the middle of a pair.</summary>
    public static IEnumerable<Hypothesis> Balanced(Frame frame, double[] x)
    {
        foreach (var across in Ways)
        {
            var stations = Station.Of(frame, across, x);
            var level = Levels(frame, !across, x);
            var middles = new List<(int A, int B, double At)>();
            for (var i = 0; i < stations.Count; i++)
                for (var k = i; k < stations.Count; k++)
                    if (Answer(frame.Shape, stations[i], stations[k], level, x)) middles.Add((i, k, stations[i].At + stations[k].At));
            middles = [.. middles.OrderBy(m => m.At)];
            var choice = -Math.Log(Math.Max(2, stations.Count));
            for (var i = 0; i < middles.Count; i++)
                for (var k = i + 1; k < middles.Count && middles[k].At - middles[i].At < 2 * Near; k++)
                {
                    var (p, q) = (middles[i], middles[k]);
                    if (p.A == p.B && q.A == q.B) continue;
                    if ((p.A == p.B && !Between(frame.Shape, stations[p.A], stations[q.A], level)) || (q.A == q.B && !Between(frame.Shape, stations[q.A], stations[p.A], level))) continue;
                    if (p.A == q.A || p.A == q.B || p.B == q.A || p.B == q.B) continue;
                    int[] features = [stations[p.A].First, stations[p.B].First, stations[q.A].First, stations[q.B].First];
                    yield return new(PatternKind.Symmetric, [.. features],
                        [frame.Sum(across, 0, Range(frame.Shape), (features[0], 1), (features[1], 1), (features[2], -1), (features[3], -1))], choice)
                    {
                        About = About(frame, !across),
                        Across = across,
                        Frame = frame,
                    };
                }
        }
    }

    /// <summary>The number of the row that each feature stands in.</summary>
    public static Dictionary<int, int> Levels(Frame frame, bool across, double[] x) =>
        Station.Of(frame, across, x).Index().SelectMany(s => s.Item.Members.Select(m => (m, s.Index))).ToDictionary(s => s.m, s => s.Index);

    /// <summary>
    /// A pair that may be each other's image: two edges, or two marks of one kind and size in one row; or a mark that may stand
    /// in the middle. Any looser, and a plate set out on a coarse grid is full of pairs that nobody meant.
    /// </summary>
    public static bool Answer(Shape shape, Station a, Station b, Dictionary<int, int> level, double[] x)
    {
        if (a == b) return a.Members.Any(shape.IsMark);
        if (a.Members.Any(shape.Edges.Contains) && b.Members.Any(shape.Edges.Contains)) return true;
        return a.Members.Any(m => b.Members.Any(n => shape.IsMark(m) && shape.IsMark(n) && shape.Kind(m) == shape.Kind(n) && level[m] == level[n] && SameSize(m, n)));

        bool SameSize(int m, int n) => shape.SizeColumn(m) < 0 || Math.Abs(shape.Size(m, x) - shape.Size(n, x)) < 1e-5;
    }

    /// <summary>A mark stands between two edges, or in one row with the pair that it halves.</summary>
    static bool Between(Shape shape, Station middle, Station side, Dictionary<int, int> level) =>
        side.Members.Any(shape.Edges.Contains) || middle.Members.Any(m => shape.IsMark(m) && side.Members.Any(n => shape.IsMark(n) && level[m] == level[n]));

    /// <summary>Two places spread evenly over the part come level by chance with the density 2 / extent.</summary>
    static double Range(Shape shape) => Math.Log(shape.Extent / 2);
}
