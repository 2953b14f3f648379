using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

/// <summary>A bent bracket with a flange, whose truth is known because it is made here, measured in three set-ups with their own tilt.</summary>
static class Brackets
{
    public const double Sigma = 0.02;

    /// <summary>Base A, upright B leaning by some degrees, flange C at the top; corners, holes in A and B.</summary>
    public sealed record Truth(ImmutableDictionary<string, Vec3> Places, ImmutableDictionary<string, double> Sizes, ImmutableDictionary<string, (Vec3 Normal, Vec3 Through)> Planes);

    public static Truth Shape(double lean = 0.09)
    {
        var up = new Vec3(-Math.Sin(lean), 0, Math.Cos(lean));
        Vec3 On(double y, double along) => new Vec3(0, y, 0) + along * up;
        var flange = On(0, 70) is var top ? top : Vec3.Zero;
        Vec3 Top(double x, double y) => flange + new Vec3(x, y, 0);
        var places = new Dictionary<string, Vec3>
        {
            ["a1"] = new(0, 0, 0),
            ["a2"] = new(90, 0, 0),
            ["a3"] = new(90, 60, 0),
            ["a4"] = new(0, 60, 0),
            ["H1"] = new(25, 15, 0),
            ["H2"] = new(70, 18, 0),
            ["H3"] = new(45, 45, 0),
            ["b3"] = On(60, 70),
            ["b4"] = On(0, 70),
            ["K1"] = On(15, 25),
            ["K2"] = On(44, 50),
            ["c1"] = Top(30, 5),
            ["c2"] = Top(30, 55),
        };
        var sizes = new Dictionary<string, double> { ["H1"] = 8, ["H2"] = 10.5, ["H3"] = 8, ["K1"] = 6.5, ["K2"] = 12 };
        var planes = new Dictionary<string, (Vec3, Vec3)> { ["A"] = (new(0, 0, -1), Vec3.Zero), ["B"] = (up.Cross(new Vec3(0, 1, 0)), Vec3.Zero), ["C"] = (new(0, 0, 1), flange) };
        return new Truth(places.ToImmutableDictionary(), sizes.ToImmutableDictionary(), planes.ToImmutableDictionary());
    }

    /// <summary>Heights of corners and pins in three set-ups, lengths between near places, diameters, the angle of the two legs.</summary>
    public static SolidSample Measured(Chance chance, Truth? truth = null, double rough = 2, double noise = 1)
    {
        truth ??= Shape();
        string[] order = ["a1", "a2", "a3", "a4", "H1", "H2", "H3", "b3", "b4", "K1", "K2", "c1", "c2"];
        string[] onA = ["a1", "a2", "a3", "a4"], onB = ["a1", "a4", "b3", "b4"], onC = ["b3", "b4", "c1", "c2"];
        Vec3 Jitter() => rough * new Vec3(chance.Normal(), chance.Normal(), chance.Normal());
        var features = order.Select(id => new SolidFeature(id, truth.Sizes.ContainsKey(id) ? SolidKind.Hole : SolidKind.Point)
        {
            Sketch = truth.Places[id] + Jitter(),
            On = id[0] == 'H' ? "A" : id[0] == 'K' ? "B" : null,
        }).ToList();
        foreach (var (id, (normal, through)) in truth.Planes.OrderBy(p => p.Key)) features.Add(new SolidFeature(id, SolidKind.Plane) { Sketch = through + Jitter(), SketchDirection = normal + 0.03 * Jitter() });
        var readings = new List<SolidReading>();
        void Add(SolidReadingKind kind, string from, string? to, double value, double sigma) => readings.Add(new SolidReading(readings.Count, kind, from, to, value + noise * sigma * chance.Normal(), sigma));

        Vec3[] ups = [new(0.02, -0.03, 1), new(1, 0.04, -0.02), new(-0.03, 1, 0.05)];
        for (var s = 0; s < ups.Length; s++)
        {
            var (up, id) = (ups[s].Unit, $"S{s + 1}");
            features.Add(new SolidFeature(id, SolidKind.SetUp));
            var low = order.Min(p => up.Dot(truth.Places[p])) - 15 - s;
            foreach (var p in order)
            {
                var height = up.Dot(truth.Places[p]) - low;
                if (!truth.Sizes.TryGetValue(p, out var d)) Add(SolidReadingKind.Height, p, id, height, Sigma);
                else
                {
                    var axis = truth.Planes[p[0] == 'H' ? "A" : "B"].Normal;
                    var sine = Math.Sqrt(1 - Math.Pow(axis.Dot(up), 2));
                    if (sine > 0.5) Add(SolidReadingKind.HeightOverPin, p, id, height + d / 2 * sine, Sigma);
                }
            }
        }
        foreach (var (id, d) in truth.Sizes.OrderBy(s => s.Key)) Add(SolidReadingKind.Diameter, id, null, d, Sigma);
        (string, string)[] pairs = [("a1", "a2"), ("a2", "a3"), ("a3", "a4"), ("a1", "a3"), ("b3", "b4"), ("a1", "b4"), ("a4", "b3"), ("c1", "c2"), ("b4", "c1"), ("a2", "H2"), ("a3", "H3"), ("a2", "c1"), ("a3", "c2")];
        foreach (var (p, q) in pairs) Add(SolidReadingKind.Distance, p, q, truth.Places[p].DistanceTo(truth.Places[q]), Sigma);
        (string, string)[] holes = [("H1", "H2"), ("H2", "H3"), ("H1", "H3"), ("K1", "K2")];
        foreach (var (p, q) in holes) Add(SolidReadingKind.OverHoles, p, q, truth.Places[p].DistanceTo(truth.Places[q]) + (truth.Sizes[p] + truth.Sizes[q]) / 2, Sigma);
        Add(SolidReadingKind.Angle, "A", "B", Math.Acos(Math.Abs(truth.Planes["A"].Normal.Dot(truth.Planes["B"].Normal))), 0.003);
        foreach (var (face, members) in ((string, string[])[])[("A", onA), ("B", onB), ("C", onC)])
            foreach (var p in members) readings.Add(new SolidReading(readings.Count, SolidReadingKind.On, p, face, 0, 0));
        return new SolidSample("bracket", "a bracket made here", [.. features], [.. readings]);
    }

    public static SolidSample WithError(SolidSample sample, int index, double error) =>
        sample with { Readings = sample.Readings.SetItem(index, sample.Readings[index] with { Value = sample.Readings[index].Value + error }) };
}
