using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;

/// <summary>
/// The features of one plan as functions of the survey's unknowns. Loose features and sizes nobody read stay out. Repaired ones
/// are known, but in none of the sets that hypotheses are drawn from: their readings say what is there now.
/// </summary>
sealed class Shape
{
    readonly Layout _layout;
    readonly double[] _foot;
    readonly bool[] _sized;
    readonly bool[] _repaired;

    public Shape(Plan plan)
    {
        _layout = plan.Solver.Layout;
        Start = plan.Fit.X;
        Features = _layout.Features;
        var fixedly = plan.Features.Select(f => !f.Loose).ToArray();
        Known = [.. Enumerable.Range(0, Features.Length).Where(f => fixedly[f] && CornersOf(f).All(c => fixedly[c]))];
        _sized = [.. plan.Features.Select(f => f.Size is { Value: > 0 })];
        _repaired = Repaired();
        Places = [.. Known.Where(f => _layout.HasPlace(f) && !_repaired[f])];
        Corners = [.. Features.Where(f => f.From is not null).SelectMany(f => new[] { f.From!, f.To! }).Select(_layout.IndexOf).Distinct()];
        var middle = Places.IsEmpty ? Vec2.Zero : Places.Aggregate(Vec2.Zero, (s, f) => s + At(f, Start)) / Places.Length;
        _foot = [.. Enumerable.Range(0, Features.Length).Select(f => _layout.IsFreeEdge(f) ? _layout.Line(f, Start).Along.Dot(middle) : 0)];
        Directed = [.. Known.Where(f => HasTurn(f) && !_repaired[f])];
        Edges = [.. Directed.Where(f => Features[f].Kind == FeatureKind.Edge)];
        Sized = [.. Known.Where(f => _sized[f] && !_repaired[f])];
        Extent = Math.Max(1, Spread());
    }

    public ImmutableArray<Feature> Features { get; }

    /// <summary>The unknowns as the readings give them.</summary>
    public double[] Start { get; }

    public ImmutableArray<int> Known { get; }

    /// <summary>Known features with a place of their own: all but edges, and none that was repaired; so with the sets below.</summary>
    public ImmutableArray<int> Places { get; }

    /// <summary>Corners that an edge or arc ends in.</summary>
    public ImmutableArray<int> Corners { get; }

    public ImmutableArray<int> Directed { get; }

    public ImmutableArray<int> Edges { get; }

    public ImmutableArray<int> Sized { get; }

    /// <summary>Largest distance between two places, or edge to edge, mm.</summary>
    public double Extent { get; }

    public double Lever => _layout.Lever;

    public int Count => _layout.Count;

    public string Id(int feature) => Features[feature].Id;

    public FeatureKind Kind(int feature) => Features[feature].Kind;

    /// <summary>Its readings say nothing of what was made.</summary>
    public bool IsRepaired(int feature) => _repaired[feature];

    public bool HasSize(int feature) => _sized[feature];

    public bool HasTurn(int feature) => Kind(feature) is FeatureKind.Edge or FeatureKind.Slot;

    public int? Find(string id) => Known.Where(f => Features[f].Id == id).Select(f => (int?)f).FirstOrDefault();

    /// <summary>A hole, slot or pricked mark, but no corner of the outline.</summary>
    public bool IsMark(int feature) => Kind(feature) is FeatureKind.Hole or FeatureKind.Slot || (Kind(feature) == FeatureKind.Point && !Corners.Contains(feature));

    public bool EndsIn(int edge, int corner) => CornersOf(edge).Contains(corner);

    public int First(int feature) => _layout.First(feature);

    /// <summary>The column of a diameter, radius or width.</summary>
    public int SizeColumn(int feature) => _layout.SizeOf(feature);

    public double Size(int feature, double[] x) => x[_layout.SizeOf(feature)];

    public double Radius(int feature, double[] x) => _layout.Radius(feature, x);

    public double SlotLength(int slot, double[] x) => x[_layout.First(slot) + 3];

    /// <summary>Place, middle of an edge with corners, or the point of a free edge opposite the middle of the part.</summary>
    public Vec2 At(int feature, double[] x)
    {
        if (_layout.HasPlace(feature)) return _layout.Place(feature, x);
        if (_layout.IsCornerEdge(feature))
        {
            var (a, b) = _layout.Corners(feature);
            return (_layout.Place(a, x) + _layout.Place(b, x)) / 2;
        }
        var (at, along) = _layout.Line(feature, x);
        return at + _foot[feature] * along;
    }

    public double Turn(int feature, double[] x) => _layout.Turn(feature, x);

    /// <summary>Length of an edge with corners or of a slot; of a free edge seven tenths of the part (common practice), mm.</summary>
    public double Reach(int directed)
    {
        if (Kind(directed) == FeatureKind.Slot) return Math.Max(1, SlotLength(directed, Start));
        if (!_layout.IsCornerEdge(directed)) return 0.7 * Extent;
        var (a, b) = _layout.Corners(directed);
        return Math.Max(1, _layout.Place(a, Start).DistanceTo(_layout.Place(b, Start)));
    }

    public bool IsFreeEdge(int feature) => _layout.IsFreeEdge(feature);

    /// <summary>The columns of all unknowns that a feature stands on, through its corners as well.</summary>
    public IEnumerable<int> Columns(int feature) =>
        Enumerable.Range(_layout.First(feature), _layout.Unknowns(feature)).Concat(CornersOf(feature).SelectMany(Columns));

    public IEnumerable<int> CornersOf(int feature) =>
        Features[feature].From is { } a ? [_layout.IndexOf(a), _layout.IndexOf(Features[feature].To!)] : [];

    /// <summary>
    /// A corner goes with a repaired edge that ends in it, as in the survey; the other edge at that corner still runs as it was
    /// made. An edge that ends in a corner which was itself built up does not.
    /// </summary>
    bool[] Repaired()
    {
        bool Marked(int f) => Features[f].Condition == FeatureCondition.Repaired;
        var ends = Enumerable.Range(0, Features.Length).Where(f => Kind(f) == FeatureKind.Edge && Marked(f)).SelectMany(CornersOf).ToHashSet();
        return [.. Features.Select((f, i) => Marked(i) || CornersOf(i).Any(Marked) || (f.Condition == FeatureCondition.Sound && ends.Contains(i)))];
    }

    double Spread()
    {
        var points = Known.Where(f => !IsFreeEdge(f)).Select(f => At(f, Start)).ToList();
        return points.Count == 0 ? 1 : points.Max(p => points.Max(p.DistanceTo));
    }
}
