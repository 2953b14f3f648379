using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Offers;
using WitnessMark.DrawingOffice.Intent.Patterns.Search;
using WitnessMark.DrawingOffice.Intent.Patterns.Weights;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Words;

/// <summary>
/// From single conditions to what a person says: four holes of one size, not six equal pairs. Groups are read off the meant
/// shape, on which what holds holds exactly, so that what merely follows is told as well.
/// </summary>
sealed class Grouping(Course course, ImmutableArray<Frame> frames)
{
    /// <summary>mm, and rad times the part's size. Cause: what was taken is solved to far less.</summary>
    const double Exact = 2e-5;

    readonly Shape _shape = course.Shape;
    readonly double[] _x = course.Belief.X;

    public IEnumerable<Group> All()
    {
        ImmutableArray<Group> seen = [.. Sizes(), .. Directed(), .. Circles(), .. Framed(InLine), .. Framed(Spaced), .. Framed(Balanced), .. Single()];
        return [.. seen, .. Asked(seen)];
    }

    /// <summary>What the person forced along a direction that the run set nothing out by, or that makes no whole row: it holds, so it is told as it was asked.</summary>
    IEnumerable<Group> Asked(ImmutableArray<Group> seen) =>
        course.Taken.Where(t => t.Forced && !seen.Any(g => g.From.Contains(t))).Select(Alone);

    ImmutableArray<Taken> Taken(PatternKind kind, IEnumerable<int> within, Frame? frame = null, bool? across = null) =>
        [.. course.Taken.Where(t => t.Hypothesis.Kind == kind && t.Hypothesis.Features.All(within.Contains)
            && (frame is null || t.Hypothesis.Frame?.Name == frame.Name) && (across is null || t.Hypothesis.Across == across))];

    IEnumerable<Group> Sizes()
    {
        foreach (var alike in Classes(_shape.Sized, (a, b) => _shape.Kind(a) == _shape.Kind(b) && Math.Abs(_shape.Size(a, _x) - _shape.Size(b, _x)) < Exact && Follows([Offers.Sizes.Equal(_shape, a, b, 0)])))
        {
            if (alike.Length > 1) yield return new(PatternKind.EqualSize, alike, Taken(PatternKind.EqualSize, alike));
            var round = course.Taken.Where(t => t.Hypothesis.Kind == PatternKind.RoundSize && t.Hypothesis.Features.Any(alike.Contains)).ToImmutableArray();
            if (!round.IsEmpty) yield return new(PatternKind.RoundSize, alike, round) { Nominal = round[0].Hypothesis.Nominal };
        }
    }

    /// <summary>Holds for certain, and not because two holes happened to be read alike to the last hundredth.</summary>
    bool Follows(ImmutableArray<Tie> ties) => Weigher.Of([.. ties.Select(t => Slope.Of(t, _shape, course.Belief))], course.Belief, _x).Implied;

    IEnumerable<Group> Directed()
    {
        double Between(int a, int b, double quarter) => Math.Abs(Math.IEEERemainder(_shape.Turn(b, _x) - _shape.Turn(a, _x) - quarter, Math.PI)) * _shape.Extent;
        var classes = Classes(_shape.Directed, (a, b) => Between(a, b, 0) < Exact).ToList();
        foreach (var c in classes.Where(c => c.Length > 1)) yield return new(PatternKind.Parallel, c, Taken(PatternKind.Parallel, c));
        for (var i = 0; i < classes.Count; i++)
            for (var k = i + 1; k < classes.Count; k++)
                if (Between(classes[i][0], classes[k][0], Math.PI / 2) < Exact)
                    yield return new(PatternKind.Square, [classes[i][0], classes[k][0]], Taken(PatternKind.Square, classes[i].Concat(classes[k])));
    }

    IEnumerable<Group> Circles()
    {
        var told = new HashSet<string>();
        var taken = course.Taken.Where(t => t.Hypothesis is { Ring: not null, Nominal: null }).Select(t => (t.Hypothesis, From: (ImmutableArray<Taken>)[t]));
        var implied = Rings.Stepped(_shape, _x).Concat(Rings.Plain(_shape, _x)).Where(h => Follows(h.Parts))
            .Select(h => (Hypothesis: h, From: ImmutableArray<Taken>.Empty));
        foreach (var (h, from) in taken.Concat(implied))
        {
            if (!told.Add($"{h.About} {string.Join(',', h.Features.Order())}")) continue;
            yield return new(h.Kind, h.Features, from) { About = h.About, Ring = h.Ring };
        }
    }

    IEnumerable<Group> Framed(Func<Frame, bool, IEnumerable<Group>> groups) => frames.SelectMany(f => groups(f, false).Concat(groups(f, true)));

    IEnumerable<Group> InLine(Frame frame, bool across)
    {
        foreach (var station in Station.Of(frame, across, _x))
        {
            var edges = station.Members.Where(_shape.Edges.Contains).ToImmutableArray();
            var others = station.Members.Except(edges).Where(m => !edges.Any(e => _shape.EndsIn(e, m))).ToImmutableArray();
            Group Of(PatternKind kind, ImmutableArray<int> features) => new(kind, [.. features.Order()], Taken(kind, features, frame, across))
            {
                About = Rows.About(frame, across),
                Frame = frame,
                Across = across,
            };
            if (edges.Length > 1 && Of(PatternKind.InLine, edges) is { From.IsEmpty: false } level) yield return level;
            if (others.IsEmpty) continue;
            if (edges.Length > 0 && Of(PatternKind.OnEdge, [.. others, edges[0]]) is { From.IsEmpty: false } on) yield return on with { Features = [.. others.Order(), edges[0]] };
            // Two places are in line along the line through them.
            if (others.All(frame.Base.Contains)) continue;
            var row = Of(PatternKind.InLine, others);
            if (others.Length > 1 && (!row.From.IsEmpty || others.Count(_shape.IsMark) > 1)) yield return row;
        }
    }

    IEnumerable<Group> Spaced(Frame frame, bool across)
    {
        var told = new HashSet<string>();
        var stations = Station.Of(frame, across, _x);
        int StationOf(int m) => stations.FindIndex(s => s.Members.Contains(m));
        foreach (var row in Station.Of(frame, !across, _x))
        {
            var marks = row.Members.Where(_shape.IsMark).Select(m => (Mark: m, At: frame.Station(m, across, _x))).OrderBy(m => m.At).ToList();
            for (int i = 0, k; i + 2 < marks.Count; i = k - 1)
            {
                for (k = i + 2; k < marks.Count && Math.Abs(marks[k].At - 2 * marks[k - 1].At + marks[k - 2].At) < Exact;) k++;
                if (k - i < 3) continue;
                ImmutableArray<int> run = [.. marks[i..k].Select(m => m.Mark)];
                if (!told.Add(string.Join(',', run.Select(StationOf)))) continue;
                var same = run.SelectMany(m => stations[StationOf(m)].Members).ToHashSet();
                yield return new(PatternKind.EquallySpaced, run, Taken(PatternKind.EquallySpaced, same, frame, across))
                {
                    About = Rows.About(frame, !across),
                    Frame = frame,
                    Across = across,
                };
            }
        }
    }

    IEnumerable<Group> Balanced(Frame frame, bool across)
    {
        var stations = Station.Of(frame, across, _x);
        var level = Rows.Levels(frame, !across, _x);
        var sums = new List<double>();
        for (var i = 0; i < stations.Count; i++)
            for (var k = i + 1; k < stations.Count; k++)
                if (!sums.Exists(s => Math.Abs(s - stations[i].At - stations[k].At) < Exact)) sums.Add(stations[i].At + stations[k].At);
        foreach (var sum in sums)
        {
            var pairs = new List<(Station A, Station B)>();
            for (var i = 0; i < stations.Count; i++)
                for (var k = i; k < stations.Count; k++)
                    if (Math.Abs(sum - stations[i].At - stations[k].At) < 2 * Exact && Rows.Answer(_shape, stations[i], stations[k], level, _x)) pairs.Add((stations[i], stations[k]));
            var all = pairs.SelectMany(p => p.A.Members.Concat(p.B.Members)).ToHashSet();
            var from = Taken(PatternKind.Symmetric, all, frame, across);
            var ofEdges = pairs.Exists(p => IsEdge(p.A) && IsEdge(p.B) && p.A != p.B);
            if (pairs.Count(p => p.A != p.B) == 0 || pairs.Count < 2 || (from.IsEmpty && !ofEdges)) continue;
            yield return new(PatternKind.Symmetric, [.. pairs.OrderBy(p => p.A == p.B).SelectMany(p => Speakers(p.A, p.B, level))], from)
            {
                About = Rows.About(frame, !across),
                Frame = frame,
                Across = across,
            };
        }
    }

    bool IsEdge(Station s) => s.Members.Any(_shape.Edges.Contains);

    /// <summary>Two edges, or two marks of one row.</summary>
    int[] Speakers(Station a, Station b, Dictionary<int, int> level)
    {
        if (IsEdge(a) && IsEdge(b)) return [a.Members.First(_shape.Edges.Contains), b.Members.First(_shape.Edges.Contains)];
        var first = a.Members.First(m => _shape.IsMark(m) && b.Members.Any(n => _shape.IsMark(n) && level[n] == level[m]));
        return [first, b.Members.First(n => _shape.IsMark(n) && level[n] == level[first])];
    }

    IEnumerable<Group> Single() =>
        from t in course.Taken
        let h = t.Hypothesis
        where h.Kind is PatternKind.RoundDistance or PatternKind.SetAngle or PatternKind.Tangent or PatternKind.Concentric
        select Alone(t);

    static Group Alone(Taken t)
    {
        var h = t.Hypothesis;
        return new(h.Kind, h.Features, [t]) { About = h.About, Nominal = h.Nominal, Frame = h.Frame, Across = h.Across, Ring = h.Ring };
    }

    static IEnumerable<ImmutableArray<int>> Classes(IEnumerable<int> all, Func<int, int, bool> alike)
    {
        var left = all.ToList();
        while (left.Count > 0)
        {
            ImmutableArray<int> found = [.. left.Where(f => alike(left[0], f))];
            left.RemoveAll(found.Contains);
            yield return found;
        }
    }
}
