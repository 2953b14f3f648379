using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Intent.Patterns;

/// <summary>What a simulated draughtsman meant: a quantity of the meant shape that is 0, or a listed value.</summary>
/// <param name="Touches">Features that it speaks of; one that is worn cannot be asked for.</param>
public sealed record Meaning(string What, ImmutableArray<string> Touches, Func<Drawn, double> Of, double? Value = null);

/// <summary>Places and sizes by name. Edges are the lines through their corners.</summary>
public sealed record Drawn(IReadOnlyDictionary<string, Vec2> At, IReadOnlyDictionary<string, double> Size)
{
    public static readonly ImmutableDictionary<string, (string From, string To)> Edges = ImmutableDictionary.CreateRange<string, (string, string)>(
        [new("E1", ("C1", "C2")), new("E2", ("C2", "C3")), new("E3", ("C3", "C4")), new("E4", ("C4", "C1"))]);

    public Vec2 Place(string id) => Edges.TryGetValue(id, out var e) ? (At[e.From] + At[e.To]) / 2 : At[id];

    public Vec2 Way(string edge) => (At[Edges[edge].To] - At[Edges[edge].From]).Unit;

    /// <summary>Along E1 and square to it.</summary>
    public double X(string id) => Way("E1").Dot(Place(id));

    public double Y(string id) => Way("E1").Left.Dot(Place(id));
}

/// <summary>A drawn plate, the made and worn plate, and the readings of it.</summary>
public sealed record Plate(Sample Sample, Drawn Meant, ImmutableArray<Meaning> Meanings, ImmutableHashSet<string> Worn, bool Inch);

/// <summary>
/// Plates as a draughtsman would set them out, made by hand, worn here and there and measured by calliper with at most one
/// slip. It shares nothing with the search that is tested on them.
/// </summary>
public sealed class PlateShop
{
    static readonly double[] MetricHoles = [4, 5, 5.5, 6, 6.5, 7, 8, 8.5, 9, 10, 11, 12, 13, 16, 20];
    static readonly double[] InchHoles = [3 / 16.0, 7 / 32.0, 1 / 4.0, 9 / 32.0, 5 / 16.0, 11 / 32.0, 3 / 8.0, 13 / 32.0, 7 / 16.0, 1 / 2.0, 5 / 8.0];

    readonly Chance _chance;
    readonly Dictionary<string, Vec2> _at = [];
    readonly Dictionary<string, double> _size = [];
    readonly List<Meaning> _meanings = [];
    readonly List<string> _holes = [];
    readonly bool _inch;
    readonly double _wide, _high;

    PlateShop(ulong seed, bool random)
    {
        _chance = new Chance(seed);
        _inch = _chance.Uniform() < 0.5;
        _wide = random ? _chance.Uniform(120, 190) : Listed(110, 190, 10, 0.25);
        _high = random ? _chance.Uniform(90, 150) : Listed(80, 150, 10, 0.25);
    }

    /// <param name="holes">Holes at least; whole patterns may add a few.</param>
    public static Plate Patterned(ulong seed, int holes)
    {
        var shop = new PlateShop(seed, random: false);
        shop.Outline(random: false);
        for (var tries = 0; tries < 500 && shop._holes.Count < holes; tries++) shop.Pattern();
        return shop.Measured(seed, wear: true);
    }

    /// <summary>Holes anywhere, of any size, in an outline of no square corner.</summary>
    public static Plate Random(ulong seed, int holes)
    {
        var shop = new PlateShop(seed, random: true);
        shop.Outline(random: true);
        for (var tries = 0; tries < 2000 && shop._holes.Count < holes; tries++)
        {
            var at = new Vec2(shop._chance.Uniform(12, shop._wide - 12), shop._chance.Uniform(12, shop._high - 12));
            if (shop.Clear(at, 9)) shop.Hole(at, shop._chance.Uniform(4, 12));
        }
        return shop.Measured(seed, wear: false);
    }

    double Unit => _inch ? Inch : 1;

    const double Inch = 25.4;

    /// <summary>A value between two lengths that a draughtsman would write: mm in steps of 5 or 10, 1 or 2, seldom of a half, inches in quarters to sixteenths.</summary>
    double Listed(double low, double high, double coarsestMm, double coarsestInch)
    {
        var step = _inch
            ? Inch * Pick(coarsestInch, coarsestInch, coarsestInch / 2, coarsestInch / 4)
            : Pick(coarsestMm, coarsestMm, coarsestMm / 5, coarsestMm / 5, 1, 1, 1, 0.5);
        return step * Math.Round(_chance.Uniform(low, high) / step);
    }

    double Pick(params ReadOnlySpan<double> of) => of[_chance.Below(of.Length)];

    double HoleSize() => _inch ? Inch * Pick(InchHoles) : Pick(MetricHoles);

    void Outline(bool random)
    {
        Vec2 Corner(double x, double y) => random ? new(x + _chance.Uniform(-6, 6), y + _chance.Uniform(-6, 6)) : new(x, y);
        (_at["C1"], _at["C2"], _at["C3"], _at["C4"]) = (Corner(0, 0), Corner(_wide, 0), Corner(_wide, _high), Corner(0, _high));
        if (random) return;
        Means("E1 and E3 parallel", ["E1", "E3"], d => _wide * d.Way("E1").Cross(d.Way("E3")));
        Means("E2 and E4 parallel", ["E2", "E4"], d => _high * d.Way("E2").Cross(d.Way("E4")));
        Means("E1 and E2 square", ["E1", "E2"], d => _high * d.Way("E1").Dot(d.Way("E2")));
        Value("width", ["E2", "E4"], d => d.X("E2") - d.X("E4"), _wide);
        Value("height", ["E1", "E3"], d => d.Y("E3") - d.Y("E1"), _high);
    }

    void Means(string what, ImmutableArray<string> touches, Func<Drawn, double> of) => _meanings.Add(new(what, touches, of));

    void Value(string what, ImmutableArray<string> touches, Func<Drawn, double> of, double value) => _meanings.Add(new(what, touches, d => of(d) - value, value));

    string Hole(Vec2 at, double size)
    {
        var id = $"H{_holes.Count + 1}";
        (_at[id], _size[id]) = (at, size);
        _holes.Add(id);
        return id;
    }

    void Pattern()
    {
        switch (_chance.Below(6))
        {
            case 0:
                Grid(2, 2);
                break;
            case 1:
                Grid(1 + _chance.Below(2), 3 + _chance.Below(3));
                break;
            case 2:
                Circle(4 + _chance.Below(4), centre: true);
                break;
            case 3:
                Circle(5 + _chance.Below(2), centre: false);
                break;
            case 4:
                Mirrored();
                break;
            default:
                Alone();
                break;
        }
    }

    /// <summary>Rows and columns of one size, given from E1 and E4, with equal gaps where there are three or more.</summary>
    void Grid(int rows, int columns)
    {
        var (dx, dy) = (Listed(16, 34, 5, 0.25), Listed(16, 34, 5, 0.25));
        if (Room(rows, columns, dx, dy, 9) is not { } at) return;
        var size = HoleSize();
        var all = new string[rows, columns];
        for (var r = 0; r < rows; r++)
            for (var c = 0; c < columns; c++) all[r, c] = Hole(at + new Vec2(c * dx, r * dy), size);
        var first = all[0, 0];
        SameSize([.. all.Cast<string>()], size);
        From(first, at);
        for (var r = 0; r < rows; r++)
            for (var c = 0; c < columns; c++)
            {
                var (id, row, column) = (all[r, c], all[r, 0], all[0, c]);
                if (c > 0) Means($"{id} level with {row}", [id, row, "E1"], d => d.Y(id) - d.Y(row));
                if (r > 0) Means($"{id} over {column}", [id, column, "E1"], d => d.X(id) - d.X(column));
            }
        for (var c = 2; c < columns; c++)
        {
            var (a, b, e) = (all[0, c - 2], all[0, c - 1], all[0, c]);
            Means($"{a} {b} {e} equally spaced", [a, b, e, "E1"], d => d.X(e) - 2 * d.X(b) + d.X(a));
        }
        if (columns > 1) Value("pitch", [first, all[0, 1], "E1"], d => d.X(all[0, 1]) - d.X(first), dx);
        if (rows > 1) Value("row gap", [first, all[1, 0], "E1"], d => d.Y(all[1, 0]) - d.Y(first), dy);
    }

    void Circle(int count, bool centre)
    {
        var diameter = Listed(40, 70, 10, 0.25);
        var (radius, size) = (diameter / 2, HoleSize());
        size = Math.Min(size, 9 * (_inch ? Inch / 32 : 1));
        if (Room(1, 1, 0, 0, radius + 8) is not { } middle) return;
        var start = Pick(0, Math.PI / 2, _chance.Uniform(0, Math.PI));
        var ids = new string[count];
        for (var i = 0; i < count; i++) ids[i] = Hole(middle + Vec2.Polar(start + 2 * Math.PI * i / count, radius), size);
        var hub = centre ? Hole(middle, _inch ? Inch * 0.75 : 20) : null;
        SameSize([.. ids], size);
        if (hub is not null) From(hub, middle);
        if (hub is not null) Value($"{hub} size", [hub], d => d.Size[hub], _size[hub]);
        Vec2 Middle(Drawn d) => hub is not null ? d.At[hub] : ids.Aggregate(Vec2.Zero, (s, i) => s + d.At[i]) / count;
        double Radius(Drawn d, string id) => d.At[id].DistanceTo(Middle(d));
        ImmutableArray<string> whole = hub is null ? [.. ids] : [hub, .. ids];
        for (var i = 1; i < count; i++)
        {
            var (a, b) = (ids[i - 1], ids[i]);
            ImmutableArray<string> touched = hub is null ? whole : [hub, a, b];
            // Without a hub two of these follow from the rest.
            if (hub is null && i > count - 2) continue;
            Means($"{a} {b} on one circle", touched, d => Radius(d, a) - Radius(d, b));
            Means($"{a} {b} one step", touched, d => radius * Math.IEEERemainder((d.At[b] - Middle(d)).Angle - (d.At[a] - Middle(d)).Angle - 2 * Math.PI / count, 2 * Math.PI));
        }
        Value("pitch circle", whole, d => 2 * Radius(d, ids[0]), diameter);
    }

    /// <summary>A pair at one height, even about the middle of the plate.</summary>
    void Mirrored()
    {
        var apart = Listed(30, _wide - 30, 10, 0.25);
        if (_wide / 2 - apart / 2 < 9) return;
        var height = Listed(12, _high - 12, 5, 0.25);
        var (left, right) = (new Vec2((_wide - apart) / 2, height), new Vec2((_wide + apart) / 2, height));
        if (!Clear(left, 9) || !Clear(right, 9)) return;
        var size = HoleSize();
        var (a, b) = (Hole(left, size), Hole(right, size));
        SameSize([a, b], size);
        Means($"{a} level with {b}", [a, b, "E1"], d => d.Y(a) - d.Y(b));
        Means($"{a} {b} even about the middle", [a, b, "E2", "E4"], d => d.X(a) + d.X(b) - d.X("E2") - d.X("E4"));
        Value("apart", [a, b, "E1"], d => d.X(b) - d.X(a), apart);
        Value($"{a} up", [a, "E1"], d => d.Y(a) - d.Y("E1"), height);
    }

    void Alone()
    {
        if (Room(1, 1, 0, 0, 12) is not { } at) return;
        var size = HoleSize();
        var id = Hole(at, size);
        From(id, at);
        Value($"{id} size", [id], d => d.Size[id], size);
    }

    void From(string id, Vec2 at)
    {
        Value($"{id} along", [id, "E4"], d => d.X(id) - d.X("E4"), at.X);
        Value($"{id} up", [id, "E1"], d => d.Y(id) - d.Y("E1"), at.Y);
    }

    void SameSize(ImmutableArray<string> ids, double size)
    {
        for (var i = 1; i < ids.Length; i++)
        {
            var (a, b) = (ids[i - 1], ids[i]);
            Means($"{a} {b} of one size", [a, b], d => d.Size[a] - d.Size[b]);
        }
        Value($"{ids[0]} size", [ids[0]], d => d.Size[ids[0]], size);
    }

    /// <summary>A listed place where a pattern finds room; null after fifty tries.</summary>
    Vec2? Room(int rows, int columns, double dx, double dy, double air)
    {
        for (var t = 0; t < 50; t++)
        {
            var (spanX, spanY) = ((columns - 1) * dx, (rows - 1) * dy);
            if (_wide - spanX < 2 * air + 2 || _high - spanY < 2 * air + 2) return null;
            var at = new Vec2(Listed(air, _wide - air - spanX, 5, 0.25), Listed(air, _high - air - spanY, 5, 0.25));
            if (at.X < air || at.Y < air || at.X + spanX > _wide - air + 3 || at.Y + spanY > _high - air + 3) continue;
            var clear = true;
            for (var r = 0; r < rows && clear; r++)
                for (var c = 0; c < columns && clear; c++) clear = Clear(at + new Vec2(c * dx, r * dy), air);
            if (clear) return at;
        }
        // A full plate takes one more hole anywhere rather than none for ever.
        return rows * columns == 1 && air < 13 ? new Vec2(Listed(10, _wide - 10, 5, 0.25), Listed(10, _high - 10, 5, 0.25)) is var p && Clear(p, 5) ? p : null : null;
    }

    bool Clear(Vec2 at, double air) => _holes.All(h => _at[h].DistanceTo(at) > air + _size[h] / 2 + 3);

    Plate Measured(ulong seed, bool wear)
    {
        // Making: inside the spread that the search is told of; normal, a hole 0.06 mm, a corner 0.07 mm each way, a bore 0.04 over with 0.02.
        var made = _at.ToDictionary(p => p.Key, p => p.Value + (p.Key[0] == 'C' ? 0.07 : 0.06) * new Vec2(_chance.Normal(), _chance.Normal()));
        var bored = _size.ToDictionary(s => s.Key, s => s.Value + 0.04 + 0.02 * _chance.Normal());
        var worn = new HashSet<string>();
        if (wear)
        {
            foreach (var h in _holes)
                if (_chance.Uniform() < 0.08)
                {
                    worn.Add(h);
                    bored[h] += _chance.Uniform(0.25, 0.8);
                }
            if (_chance.Uniform() < 0.2)
            {
                // One edge has rusted back evenly, and its corners with it.
                var edge = $"E{1 + _chance.Below(4)}";
                var (from, to) = Drawn.Edges[edge];
                var inwards = _chance.Uniform(0.4, 1.2) * (_at[to] - _at[from]).Unit.Left;
                (made[from], made[to]) = (made[from] + inwards, made[to] + inwards);
                worn.Add(edge);
            }
        }
        var readings = Readings(new Drawn(made, bored)).ToList();
        if (wear && _chance.Uniform() < 0.4)
        {
            var slip = _chance.Below(readings.Count);
            readings[slip] = readings[slip] with { Value = Math.Abs(readings[slip].Value + Pick(1, -1, 2, 10)) };
        }
        ImmutableArray<Feature> features =
        [
            .. new[] { "C1", "C2", "C3", "C4" }.Select(c => new Feature(c, FeatureKind.Point) { Sketch = Rough(c) }),
            .. _holes.Select(h => new Feature(h, FeatureKind.Hole) { Sketch = Rough(h) }),
            .. Drawn.Edges.OrderBy(e => e.Key).Select(e => new Feature(e.Key, FeatureKind.Edge) { From = e.Value.From, To = e.Value.To }),
        ];
        return new(new Sample($"plate-{seed}", $"Plate {seed}", features, [.. readings]), new Drawn(_at, _size), [.. _meanings], [.. worn], _inch);
    }

    Vec2 Rough(string id) => _at[id] + new Vec2(_chance.Uniform(-2, 2), _chance.Uniform(-2, 2));

    IEnumerable<Reading> Readings(Drawn made)
    {
        var calliper = Instrument.Usual.First(i => i.Name == "calliper").StandardUncertainty();
        var index = 0;
        Reading Read(ReadingKind kind, string from, string? to, double value) =>
            new(index++, kind, from, to, 0.02 * Math.Round((value + calliper * _chance.Normal()) / 0.02), calliper) { Instrument = "calliper" };

        foreach (var h in _holes) yield return Read(ReadingKind.Diameter, h, null, made.Size[h]);
        foreach (var e in Drawn.Edges.Keys.Order()) yield return Read(ReadingKind.LengthAlongEdge, e, null, made.At[Drawn.Edges[e].From].DistanceTo(made.At[Drawn.Edges[e].To]));
        yield return Read(ReadingKind.CentreDistance, "C1", "C3", made.At["C1"].DistanceTo(made.At["C3"]));
        yield return Read(ReadingKind.CentreDistance, "C2", "C4", made.At["C2"].DistanceTo(made.At["C4"]));
        foreach (var h in _holes)
        {
            // From the nearer edge of each pair, and to three other holes far and near, so that each place has a check or two.
            foreach (var pair in (string[][])[["E1", "E3"], ["E2", "E4"]])
            {
                var edge = pair.MinBy(e => Off(made, h, e))!;
                if (Off(made, h, edge) > made.Size[h] / 2 + 0.5) yield return Read(ReadingKind.EdgeToHole, h, edge, Off(made, h, edge) - made.Size[h] / 2);
            }
            var others = _holes.Where(o => o != h).OrderBy(o => made.At[o].DistanceTo(made.At[h])).ToList();
            foreach (var o in new[] { 0, others.Count / 2, others.Count - 1 }.Distinct().Where(i => i >= 0 && i < others.Count).Select(i => others[i]))
                if (made.At[o].DistanceTo(made.At[h]) > (made.Size[h] + made.Size[o]) / 2 + 0.5) yield return Read(ReadingKind.InsideBetweenHoles, h, o, made.At[h].DistanceTo(made.At[o]) - (made.Size[h] + made.Size[o]) / 2);
        }
    }

    static double Off(Drawn d, string hole, string edge) => Math.Abs(d.Way(edge).Left.Dot(d.At[hole] - d.At[Drawn.Edges[edge].From]));
}
