using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// Where each feature's unknowns stand in the vector x. All unknowns are mm: a turn is carried as turn × lever, so that the
/// columns of the equations are of one size and one tolerance serves them all.
/// Point x, y. Hole x, y, d. Arc x, y, r. Slot x, y, turn, length, width. Free edge turn, offset. Frame of picks x, y, turn,
/// and (scale − 1) × lever where its scale is not quite known.
/// </summary>
sealed class Layout
{
    readonly Dictionary<string, int> _index = [];
    readonly int[] _first;
    readonly int[] _frameAt;
    readonly HashSet<int> _scaled = [];

    public Layout(Sample sample, double lever)
    {
        Features = sample.Features;
        Lever = lever;
        _first = new int[Features.Length];
        var blocks = new List<int>();
        for (var i = 0; i < Features.Length; i++)
        {
            _index.Add(Features[i].Id, i);
            _first[i] = blocks.Count;
            blocks.AddRange(Enumerable.Repeat(i, UnknownsOf(Features[i])));
        }
        Frames = [.. sample.Readings.Where(r => r.Kind == ReadingKind.Picked).Select(r => r.Frame).Distinct()];
        _frameAt = new int[Frames.Length];
        for (var k = 0; k < Frames.Length; k++)
        {
            _frameAt[k] = blocks.Count;
            var scaled = sample.Frames.Any(f => f.Name == Frames[k] && f.ScaleStd > 0);
            if (scaled) _scaled.Add(blocks.Count);
            blocks.AddRange(Enumerable.Repeat(Features.Length + k, scaled ? 4 : 3));
        }
        BlockOf = [.. Renumbered(blocks)];
    }

    public ImmutableArray<Feature> Features { get; }

    public ImmutableArray<string> Frames { get; }

    /// <summary>mm of arc per radian of turn: the size of the part.</summary>
    public double Lever { get; }

    /// <summary>For each unknown its block for the elimination order, numbered without gaps.</summary>
    public int[] BlockOf { get; }

    public int Count => BlockOf.Length;

    public int IndexOf(string id) => _index[id];

    public int First(int feature) => _first[feature];

    /// <summary>First unknown of a frame of picks.</summary>
    public int FrameAt(int frame) => _frameAt[frame];

    /// <param name="frameAt">First unknown of the frame.</param>
    public bool IsScaled(int frameAt) => _scaled.Contains(frameAt);

    /// <summary>What a frame shows of a true mm.</summary>
    public double ScaleOf(int frameAt, ReadOnlySpan<double> x) => IsScaled(frameAt) ? 1 + x[frameAt + 3] / Lever : 1;

    public int Unknowns(int feature) => UnknownsOf(Features[feature]);

    public bool HasPlace(int feature) => Features[feature].Kind != FeatureKind.Edge;

    public bool IsCornerEdge(int feature) => Features[feature] is { Kind: FeatureKind.Edge, From: not null };

    public bool IsFreeEdge(int feature) => Features[feature] is { Kind: FeatureKind.Edge, From: null };

    /// <summary>Where the feature's diameter, radius or width stands; −1 where it has none.</summary>
    public int SizeOf(int feature) => Features[feature].Kind switch
    {
        FeatureKind.Hole or FeatureKind.Arc => _first[feature] + 2,
        FeatureKind.Slot => _first[feature] + 4,
        _ => -1,
    };

    /// <summary>Half the size across: radius of a hole or arc; 0 for a point.</summary>
    public double Radius(int feature, ReadOnlySpan<double> x) => Features[feature].Kind switch
    {
        FeatureKind.Hole => x[_first[feature] + 2] / 2,
        FeatureKind.Arc => x[_first[feature] + 2],
        _ => 0,
    };

    /// <summary>Derivative of <see cref="Radius"/> with respect to the size unknown.</summary>
    public double RadiusRate(int feature) => Features[feature].Kind == FeatureKind.Hole ? 0.5 : 1;

    /// <summary>Where a turn stands: slot or free edge.</summary>
    public int TurnOf(int feature) => Features[feature].Kind == FeatureKind.Slot ? _first[feature] + 2 : _first[feature];

    public Vec2 Place(int feature, ReadOnlySpan<double> x) => new(x[_first[feature]], x[_first[feature] + 1]);

    public (int From, int To) Corners(int feature) => (_index[Features[feature].From!], _index[Features[feature].To!]);

    /// <summary>The line of an edge: a point on it and its direction.</summary>
    public (Vec2 At, Vec2 Along) Line(int edge, ReadOnlySpan<double> x)
    {
        if (IsCornerEdge(edge))
        {
            var (from, to) = Corners(edge);
            return (Place(from, x), (Place(to, x) - Place(from, x)).Unit);
        }
        var along = Vec2.Polar(x[_first[edge]] / Lever);
        return (x[_first[edge] + 1] * along.Left, along);
    }

    /// <summary>Direction of an edge or slot, radians.</summary>
    public double Turn(int feature, ReadOnlySpan<double> x) =>
        IsCornerEdge(feature) ? Line(feature, x).Along.Angle : x[TurnOf(feature)] / Lever;

    /// <summary>The three motions of the whole plan that no reading sees: shift in x, shift in y, turn about <paramref name="centre"/> by 1/lever.</summary>
    public double[][] DatumMotions(ReadOnlySpan<double> x, Vec2 centre)
    {
        double[][] motions = [new double[Count], new double[Count], new double[Count]];
        for (var i = 0; i < Features.Length; i++)
        {
            var f = _first[i];
            if (HasPlace(i))
            {
                var arm = (Place(i, x) - centre).Left / Lever;
                (motions[0][f], motions[1][f + 1]) = (1, 1);
                (motions[2][f], motions[2][f + 1]) = (arm.X, arm.Y);
                if (Features[i].Kind == FeatureKind.Slot) motions[2][f + 2] = 1;
            }
            else if (IsFreeEdge(i))
            {
                var normal = Line(i, x).Along.Left;
                (motions[0][f + 1], motions[1][f + 1]) = (normal.X, normal.Y);
                motions[2][f] = 1;
                // Turning about the centre instead of the origin shifts the line along its normal.
                motions[2][f + 1] = -centre.Left.Dot(normal) / Lever;
            }
        }
        for (var k = 0; k < Frames.Length; k++)
        {
            var f = _frameAt[k];
            var turn = x[f + 2] / Lever;
            var scale = ScaleOf(f, x);
            var (sx, sy) = (scale * new Vec2(1, 0).Turned(turn), scale * new Vec2(0, 1).Turned(turn));
            (motions[0][f], motions[0][f + 1]) = (-sx.X, -sx.Y);
            (motions[1][f], motions[1][f + 1]) = (-sy.X, -sy.Y);
            var swing = scale * centre.Left.Turned(turn) / Lever;
            (motions[2][f], motions[2][f + 1], motions[2][f + 2]) = (swing.X, swing.Y, -1);
        }
        return motions;
    }

    /// <summary>Every feature with a place that an equation leans on, through edges as well.</summary>
    public IEnumerable<int> PlacesIn(Observed o)
    {
        if (o.From < 0) return [];
        IEnumerable<int> own = o.Kind == ReadingKind.Picked || o.To < 0 ? Through(o.From) : Through(o.From).Concat(Through(o.To));
        return o.Kind == ReadingKind.AcrossEdges ? own.Append(o.Part).Distinct() : own.Distinct();
    }

    IEnumerable<int> Through(int feature)
    {
        if (HasPlace(feature)) yield return feature;
        if (Features[feature].From is null) yield break;
        var (a, b) = Corners(feature);
        yield return a;
        yield return b;
    }

    static int UnknownsOf(Feature f) => f.Kind switch
    {
        FeatureKind.Point => 2,
        FeatureKind.Hole or FeatureKind.Arc => 3,
        FeatureKind.Slot => 5,
        _ => f.From is null ? 2 : 0,
    };

    static IEnumerable<int> Renumbered(List<int> blocks)
    {
        var (next, last) = (-1, -1);
        foreach (var b in blocks)
        {
            if (b != last) (next, last) = (next + 1, b);
            yield return next;
        }
    }
}
