using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>Which edges the faces share: one upper side all over, and the joints.</summary>
static class Edges
{
    /// <summary>Turns rings round so that neighbours walk their shared edge opposite ways; the first face stays as it is.</summary>
    public static ImmutableArray<ImmutableArray<int>> Orient(Pressing p, ImmutableArray<ImmutableArray<int>> rings)
    {
        TwoAtMost(p, rings);
        var turned = rings.ToArray();
        var done = new bool[turned.Length];
        // A face may stand apart from the rest; that is told later, by name.
        for (var start = 0; start < turned.Length; start++)
        {
            if (done[start]) continue;
            done[start] = true;
            var queue = new Queue<int>([start]);
            while (queue.TryDequeue(out var f))
                for (var g = 0; g < turned.Length; g++)
                {
                    if (g == f || SameWay(turned[f], turned[g]) is not { } same) continue;
                    if (done[g] && same)
                        throw ModelMaker.Refused($"faces {p.Faces[f].Name} and {p.Faces[g].Name}", "their sides", "the sheet would have to turn over between them; look at the order of points in their rings");
                    if (done[g]) continue;
                    if (same) turned[g] = [.. turned[g].Reverse()];
                    done[g] = true;
                    queue.Enqueue(g);
                }
        }
        return [.. turned];
    }

    static void TwoAtMost(Pressing p, ImmutableArray<ImmutableArray<int>> rings)
    {
        var sides = rings.SelectMany((r, f) => r.Select((a, i) => (Edge: (Math.Min(a, r[(i + 1) % r.Length]), Math.Max(a, r[(i + 1) % r.Length])), Face: f)));
        if (sides.GroupBy(s => s.Edge).FirstOrDefault(g => g.Count() > 2) is { } crowd)
            throw ModelMaker.Refused($"edge {p.Points[crowd.Key.Item1].Name} to {p.Points[crowd.Key.Item2].Name}", string.Join(", ", crowd.Select(s => p.Faces[s.Face].Name)),
                "three faces share it; a sheet has two sides to an edge: give the third its own points, a thickness off");
    }

    /// <summary>Whether two rings walk a shared edge the same way; null when they share none.</summary>
    static bool? SameWay(ImmutableArray<int> a, ImmutableArray<int> b)
    {
        for (var i = 0; i < a.Length; i++)
            for (var k = 0; k < b.Length; k++)
            {
                var (a0, a1, b0, b1) = (a[i], a[(i + 1) % a.Length], b[k], b[(k + 1) % b.Length]);
                if (a0 == b0 && a1 == b1) return true;
                if (a0 == b1 && a1 == b0) return false;
            }
        return null;
    }

    public static ImmutableArray<ModelJoint> Joints(Pressing p, ImmutableArray<ImmutableArray<int>> rings, ImmutableArray<Vec3> points, Motion3[] frames, ImmutableArray<Vec3> measured)
    {
        var shared = new SortedDictionary<(int, int), List<(int From, int To)>>();
        var owners = new Dictionary<(int, int), List<int>>();
        for (var f = 0; f < rings.Length; f++)
            for (var i = 0; i < rings[f].Length; i++)
            {
                var (a, b) = (rings[f][i], rings[f][(i + 1) % rings[f].Length]);
                var key = (Math.Min(a, b), Math.Max(a, b));
                if (!owners.TryGetValue(key, out var has)) owners[key] = has = [];
                has.Add(f);
                if (has.Count == 2) (shared.TryGetValue((has[0], f), out var list) ? list : shared[(has[0], f)] = []).Add((b, a));
            }
        return [.. shared.Select((s, i) => Joint(p, i, s.Key, Whole(p, s.Key, s.Value, points), rings, points, frames, measured))];
    }

    /// <summary>Stretches of one straight line, end to end, as one; in the walk of the first face.</summary>
    static (int From, int To) Whole(Pressing p, (int First, int Second) pair, List<(int From, int To)> parts, ImmutableArray<Vec3> points)
    {
        var (from, to) = parts[0];
        var left = parts.Skip(1).ToList();
        while (left.FindIndex(e => e.From == to || e.To == from) is var k && k >= 0)
        {
            var part = left[k];
            left.RemoveAt(k);
            (from, to) = part.From == to ? (from, part.To) : (part.From, to);
        }
        var faces = $"faces {p.Faces[pair.First].Name} and {p.Faces[pair.Second].Name}";
        if (left.Count > 0) throw ModelMaker.Refused(faces, "two edges apart", "they may meet along one edge only; write the window between as a cut-out, or part one face in two");
        var along = (points[to] - points[from]).Unit;
        foreach (var (a, _) in parts)
            if ((points[a] - points[from]).Cross(along).Length > 0.05) throw ModelMaker.Refused(faces, p.Points[a].Name, "they meet along a bent line; two flat faces meet along a straight one");
        return (from, to);
    }

    static ModelJoint Joint(Pressing p, int index, (int First, int Second) pair, (int From, int To) edge, ImmutableArray<ImmutableArray<int>> rings, ImmutableArray<Vec3> points, Motion3[] frames, ImmutableArray<Vec3> measured)
    {
        var (first, second) = pair;
        var along = (points[edge.To] - points[edge.From]).Unit;
        var (n1, n2) = (frames[first].Z, frames[second].Z);
        var into = n2.Cross(along * -1);
        var bend = Math.Atan2(into.Dot(n1), n1.Dot(n2));
        var (a, b) = (p.Faces[first].Name, p.Faces[second].Name);
        var wish = p.Wishes.FirstOrDefault(w => (w.First, w.Second) == (a, b) || (w.First, w.Second) == (b, a));
        if (Math.Abs(bend) > Closed) throw ModelMaker.Refused($"joint {a}-{b}", $"{180 - Math.Abs(bend) * 180 / Math.PI:0.#}°", "the faces lie on one another; give a bend of 170° at most, or write the lap as spots");
        if (Math.Abs(bend) < Open && wish?.Kind != JointWish.WeldOnly)
            throw ModelMaker.Refused($"joint {a}-{b}", $"{Math.Abs(bend) * 180 / Math.PI:0.##}° from flat", "the two faces are one plane: write them as one face, or mark the joint weld if there is a seam");
        var std = AngleSpread.Std(p, rings[first], rings[second], measured, along);
        return new(index, $"{a}-{b}", first, second, edge.From, edge.To, points[edge.From].DistanceTo(points[edge.To]), bend, std, wish?.InsideRadius ?? p.InsideRadius, wish?.Kind ?? JointWish.Free);
    }

    const double Closed = 170 * Math.PI / 180;
    const double Open = 0.5 * Math.PI / 180;

    public static int JointOf(ImmutableArray<ModelJoint> joints, ImmutableArray<int> ring, int face, int side, ImmutableArray<Vec3> points)
    {
        var (a, b) = (ring[side], ring[(side + 1) % ring.Length]);
        foreach (var j in joints)
        {
            if (j.First != face && j.Second != face) continue;
            var (from, to) = j.First == face ? (j.From, j.To) : (j.To, j.From);
            if (On(points[a]) && On(points[b]) && (points[b] - points[a]).Dot(points[to] - points[from]) > 0) return j.Index;

            bool On(Vec3 x) => Distance(x, points[from], points[to]) < 1e-6;
        }
        return -1;
    }

    public static double Distance(Vec3 p, Vec3 a, Vec3 b)
    {
        var d = b - a;
        var t = Math.Clamp((p - a).Dot(d) / d.Dot(d), 0, 1);
        return p.DistanceTo(a + d * t);
    }

    /// <summary>Every face hangs on the others, and each wish names a joint that is there.</summary>
    public static void Hanging(Pressing p, ImmutableArray<ModelFace> faces, ImmutableArray<ModelJoint> joints)
    {
        foreach (var w in p.Wishes)
            if (!joints.Any(j => (faces[j.First].Name, faces[j.Second].Name) is var n && (n == (w.First, w.Second) || n == (w.Second, w.First))))
                throw ModelMaker.Refused("joint", $"{w.First}, {w.Second}", "these faces share no edge; they must name the same two points");
        var reached = new HashSet<int> { 0 };
        while (joints.FirstOrDefault(j => reached.Contains(j.First) != reached.Contains(j.Second)) is { } next)
        {
            reached.Add(next.First);
            reached.Add(next.Second);
        }
        var loose = Enumerable.Range(0, faces.Length).FirstOrDefault(f => !reached.Contains(f), -1);
        if (loose >= 0) throw ModelMaker.Refused("face", faces[loose].Name, $"it shares no edge with the faces that hang on {faces[0].Name}; name the same two points in both rings");
    }
}
