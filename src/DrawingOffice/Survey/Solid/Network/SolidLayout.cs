using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>
/// Where each feature's unknowns stand in the vector x; all are mm. A direction is carried as three unknowns, lever times a
/// vector of which only the direction is ever read; a row of its own keeps the length. A line has the direction and the place
/// nearest the middle of the sketch; a plane n·(p − middle) = offset.
/// Point x, y, z. Hole x, y, z, d and, where something reads its own axis, the axis. Plane, set-up: normal, offset.
/// Free edge: direction, place. Cylinder: direction, place, d. Frame on a face: direction of x, shift x, shift y.
/// </summary>
sealed class SolidLayout
{
    readonly Dictionary<string, int> _index = [];
    readonly int[] _first;
    readonly int[] _on;
    readonly bool[] _cornered;
    readonly HashSet<(int, int)> _lies;

    /// <param name="turning">Holes whose own axis is unknown and read.</param>
    public SolidLayout(SolidSample sample, double lever, IReadOnlySet<string> turning)
    {
        (Features, Lever) = (sample.Features, lever);
        for (var i = 0; i < Features.Length; i++) _index.Add(Features[i].Id, i);
        _first = new int[Features.Length];
        _on = [.. Features.Select(f => f.On is null ? -1 : _index[f.On])];
        _cornered = [.. Features.Select(f => f is { Kind: SolidKind.Edge, From: { } from } && Features[_index[from]].Kind != SolidKind.Plane)];
        _lies = [.. sample.Readings.Where(r => r is { Kind: SolidReadingKind.On, Exact: true }).Select(r => (_index[r.From], _index[r.To!]))];
        for (var i = 0; i < Features.Length; i++)
            if (_on[i] >= 0) _lies.Add((i, _on[i]));
        var blocks = new List<int>();
        Turning = [.. Features.Select(f => f.Kind == SolidKind.Hole && f.On is null && turning.Contains(f.Id))];
        for (var i = 0; i < Features.Length; i++)
        {
            _first[i] = blocks.Count;
            blocks.AddRange(Enumerable.Repeat(i, Unknowns(i)));
        }
        Frames = [.. sample.Readings.Where(r => r.Kind == SolidReadingKind.OnFace).Select(r => (_index[r.To!], r.Frame)).Distinct()];
        FirstOfFrames = blocks.Count;
        for (var k = 0; k < Frames.Length; k++) blocks.AddRange(Enumerable.Repeat(Features.Length + k, 5));
        BlockOf = [.. Layout.Renumbered(blocks)];
        var sketched = Features.Where(f => f.Kind is SolidKind.Point or SolidKind.Hole && f.Sketch is not null).Select(f => f.Sketch!.Value).ToList();
        Middle = sketched.Aggregate(Vec3.Zero, (a, b) => a + b) / Math.Max(1, sketched.Count);
    }

    public ImmutableArray<SolidFeature> Features { get; }

    public ImmutableArray<(int Plane, string Name)> Frames { get; }

    public ImmutableArray<bool> Turning { get; }

    /// <summary>mm of arc per radian of turn: the size of the part.</summary>
    public double Lever { get; }

    /// <summary>Middle of the sketch: a constant near the part, so that offsets stay small wherever the sketch lies.</summary>
    public Vec3 Middle { get; }

    public int FirstOfFrames { get; }

    public int[] BlockOf { get; }

    public int Count => BlockOf.Length;

    public int IndexOf(string id) => _index[id];

    public int First(int feature) => _first[feature];

    public SolidKind Kind(int feature) => Features[feature].Kind;

    public int Unknowns(int feature) => Kind(feature) switch
    {
        SolidKind.Point => 3,
        SolidKind.Hole => Turning[feature] ? 7 : 4,
        SolidKind.Plane or SolidKind.SetUp => 4,
        SolidKind.Cylinder => 7,
        _ => _cornered[feature] ? 0 : 6,
    };

    public bool HasPlace(int feature) => Kind(feature) is SolidKind.Point or SolidKind.Hole;

    public bool IsPlane(int feature) => Kind(feature) is SolidKind.Plane or SolidKind.SetUp;

    public bool IsCornered(int feature) => _cornered[feature];

    /// <summary>A free edge or an axis: direction and place of its own.</summary>
    public bool IsLine(int feature) => Kind(feature) == SolidKind.Cylinder || (Kind(feature) == SolidKind.Edge && !_cornered[feature]);

    /// <summary>The face that the feature lies on; −1 for none.</summary>
    public int On(int feature) => _on[feature];

    public (int From, int To) Corners(int edge) => (_index[Features[edge].From!], _index[Features[edge].To!]);

    /// <summary>Where the diameter stands; −1 where there is none.</summary>
    public int SizeOf(int feature) => Kind(feature) switch
    {
        SolidKind.Hole => _first[feature] + 3,
        SolidKind.Cylinder => _first[feature] + 6,
        _ => -1,
    };

    /// <summary>Where the feature's own direction stands; −1 where it has none of its own.</summary>
    public int DirectionAt(int feature) => Turning[feature] ? _first[feature] + 4 : IsPlane(feature) || IsLine(feature) ? _first[feature] : -1;

    /// <summary>True when the feature has a direction, of its own or through another.</summary>
    public bool HasDirection(int feature) => DirectionAt(feature) >= 0 || _cornered[feature] || (Kind(feature) == SolidKind.Hole && _on[feature] >= 0);

    /// <summary>Where x, y, z of a point, hole or line stand.</summary>
    public int PlaceAt(int feature) => HasPlace(feature) ? _first[feature] : _first[feature] + 3;

    public static Vec3 Read(int at, ReadOnlySpan<double> x) => new(x[at], x[at + 1], x[at + 2]);

    public static void Write(int at, Span<double> x, Vec3 v) => (x[at], x[at + 1], x[at + 2]) = (v.X, v.Y, v.Z);

    /// <summary>Point, centre, middle of a cornered edge, or the place of a line nearest the middle of the sketch.</summary>
    public Vec3 Place(int feature, ReadOnlySpan<double> x)
    {
        if (!_cornered[feature]) return Read(PlaceAt(feature), x);
        var (a, b) = Corners(feature);
        return (Place(a, x) + Place(b, x)) / 2;
    }

    /// <summary>Length 1.</summary>
    public Vec3 Direction(int feature, ReadOnlySpan<double> x)
    {
        if (_cornered[feature])
        {
            var (a, b) = Corners(feature);
            return (Place(b, x) - Place(a, x)).Unit;
        }
        var at = DirectionAt(feature);
        return at >= 0 ? Read(at, x).Unit : Direction(_on[feature], x);
    }

    public double Offset(int plane, ReadOnlySpan<double> x) => x[_first[plane] + 3];

    /// <summary>The features whose unknowns a feature leans on: itself, its corners.</summary>
    public IEnumerable<int> Through(int feature)
    {
        yield return feature;
        if (_cornered[feature])
        {
            var (a, b) = Corners(feature);
            foreach (var f in Through(a).Concat(Through(b))) yield return f;
        }
    }

    /// <summary>The face in which two features are both said to lie; −1 where there is none. Holes, which stand square to their face, are not meant.</summary>
    public int FaceOfBoth(int a, int b)
    {
        for (var plane = 0; plane < Features.Length; plane++)
            if (Kind(plane) == SolidKind.Plane && LiesIn(a, plane) && LiesIn(b, plane)) return plane;
        return -1;
    }

    /// <summary>True when the feature is said to lie exactly in the face, by itself or through its corners or faces.</summary>
    public bool LiesIn(int feature, int plane)
    {
        if (_lies.Contains((feature, plane))) return true;
        if (Kind(feature) != SolidKind.Edge || Features[feature].From is null) return false;
        var (a, b) = Corners(feature);
        return _cornered[feature] ? LiesIn(a, plane) && LiesIn(b, plane) : a == plane || b == plane;
    }

    /// <summary>Every unknown that a feature leans on.</summary>
    public IEnumerable<int> Touched(int feature) =>
        Through(feature).SelectMany(f => Enumerable.Range(_first[f], Unknowns(f)))
            .Concat(Kind(feature) == SolidKind.Hole && _on[feature] >= 0 ? Enumerable.Range(_first[_on[feature]], 4) : []);

    /// <summary>The six motions of the whole part that no reading sees: shifts along x, y, z and turns by 1/lever about lines through <paramref name="centre"/>.</summary>
    public double[][] DatumMotions(ReadOnlySpan<double> x, Vec3 centre)
    {
        Vec3[] axes = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)];
        var motions = new double[6][];
        for (var m = 0; m < 6; m++)
        {
            motions[m] = new double[Count];
            var (shift, turn) = m < 3 ? (axes[m], Vec3.Zero) : (Vec3.Zero, axes[m - 3] / Lever);
            Move(x, centre, shift, turn, motions[m]);
        }
        return motions;
    }

    /// <summary>Rates of all unknowns when the part is shifted and turned.</summary>
    void Move(ReadOnlySpan<double> x, Vec3 centre, Vec3 shift, Vec3 turn, double[] rates)
    {
        var atMiddle = shift + turn.Cross(Middle - centre);
        for (var i = 0; i < Features.Length; i++)
        {
            if (DirectionAt(i) is >= 0 and var at) Write(at, rates, turn.Cross(Read(at, x)));
            if (HasPlace(i)) Write(PlaceAt(i), rates, shift + turn.Cross(Place(i, x) - centre));
            else if (IsPlane(i)) rates[_first[i] + 3] = Direction(i, x).Dot(atMiddle);
            else if (IsLine(i))
            {
                // The place slides along the line to stay the one nearest the middle.
                var (along, place) = (Direction(i, x), Place(i, x));
                var move = shift + turn.Cross(place - centre);
                Write(PlaceAt(i), rates, move - along * (along.Dot(move) + turn.Cross(along).Dot(place - Middle)));
            }
        }
        for (var k = 0; k < Frames.Length; k++)
        {
            var f = FirstOfFrames + 5 * k;
            var (ex, ey) = FaceAxes(Frames[k].Plane, f, x);
            Write(f, rates, turn.Cross(Read(f, x)));
            (rates[f + 3], rates[f + 4]) = (-ex.Dot(atMiddle), -ey.Dot(atMiddle));
        }
    }

    /// <summary>x and y of a frame on a face, length 1, in the face; y is x turned left as seen from outside.</summary>
    public (Vec3 X, Vec3 Y) FaceAxes(int plane, int frame, ReadOnlySpan<double> x)
    {
        var (n, u) = (Direction(plane, x), Read(frame, x));
        var ex = (u - u.Dot(n) * n).Unit;
        return (ex, n.Cross(ex));
    }
}
