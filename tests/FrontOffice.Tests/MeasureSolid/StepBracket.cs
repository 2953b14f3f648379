using System.Globalization;
using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.MeasureSolid;

/// <summary>
/// A step bracket that never was, measured with seeded chance: a floor A, a back B that leans 105° off it and an ear C that hangs 93° off it.
/// All true figures come from the corners below by plain geometry, so nothing of the adjustment is in them.
/// </summary>
sealed class StepBracket
{
    const double BackLean = 15 * Math.PI / 180, EarLean = 3 * Math.PI / 180;

    /// <summary>Setting angles, radians: between A and B, A and C.</summary>
    public const double BackAngle = Math.PI / 2 + BackLean, EarAngle = Math.PI / 2 + EarLean;

    static readonly Vec3 s_up = new(0, Math.Sin(BackLean), Math.Cos(BackLean)), s_down = new(Math.Sin(EarLean), 0, -Math.Cos(EarLean));

    public static IReadOnlyDictionary<string, Vec3> True { get; } = new Dictionary<string, Vec3>
    {
        ["P1"] = new(0, 0, 0),
        ["P2"] = new(80, 0, 0),
        ["P3"] = new(80, 50, 0),
        ["P4"] = new(0, 50, 0),
        ["P5"] = new Vec3(10, 50, 0) + s_up * 40,
        ["P6"] = new Vec3(70, 50, 0) + s_up * 40,
        ["P7"] = new Vec3(80, 5, 0) + s_down * 30,
        ["P8"] = new Vec3(80, 45, 0) + s_down * 30,
        ["H1"] = new(18, 15, 0),
        ["H2"] = new(60, 15, 0),
        ["H3"] = new Vec3(40, 50, 0) + s_up * 22,
        ["H4"] = new Vec3(80, 25, 0) + s_down * 16,
    };

    public static IReadOnlyDictionary<string, double> Diameters { get; } = new Dictionary<string, double> { ["H1"] = 8.4, ["H2"] = 8.4, ["H3"] = 25.4, ["H4"] = 10.5 };

    public static (string Id, string A, string B)[] Edges { get; } =
    [
        ("E1", "P1", "P2"), ("E2", "P2", "P3"), ("E3", "P3", "P4"), ("E4", "P4", "P1"), ("E5", "P4", "P5"), ("E6", "P5", "P6"), ("E7", "P6", "P3"),
        ("E8", "P2", "P7"), ("E9", "P7", "P8"), ("E10", "P8", "P3"),
    ];

    static readonly Dictionary<string, string> s_face = new()
    {
        ["P1"] = "A",
        ["P2"] = "A",
        ["P3"] = "A",
        ["P4"] = "A",
        ["P5"] = "B",
        ["P6"] = "B",
        ["P7"] = "C",
        ["P8"] = "C",
        ["H1"] = "A",
        ["H2"] = "A",
        ["H3"] = "B",
        ["H4"] = "C",
    };

    /// <summary>The plate's upward in the part's axes and its height, for two ways the bracket stood on the surface plate.</summary>
    static readonly (string Id, Vec3 Up, double Height)[] s_setUps =
    [
        ("S1", new Vec3(0.021, -0.013, 1).Unit, 42.7), ("S2", new Vec3(-0.017, 1, 0.030).Unit, 6.3),
    ];

    readonly Chance _chance;
    readonly StringBuilder _sheet = new();

    StepBracket(ulong seed) => _chance = new(seed);

    /// <summary>The reading sheet of one evening.</summary>
    /// <param name="slip">Added to the height of P6 in the first set-up, mm: a misreading.</param>
    public static string Sheet(ulong seed, double slip = 0)
    {
        var b = new StepBracket(seed);
        b.Features();
        b.Readings(slip);
        b.BackFlat();
        return b._sheet.ToString();
    }

    public static double Distance(string a, string b) => True[a].DistanceTo(True[b]);

    /// <summary>Standard uncertainty of a calliper or height gauge as the usual instruments state it, mm.</summary>
    const double Std = 0.021;

    void Features()
    {
        _sheet.Append("""
            # Step bracket of the Quillbeck van, invented: the readings are made by tests/FrontOffice.Tests/MeasureSolid/StepBracket.cs.
            sample,step-bracket,Step bracket
            units,mm

            # A the floor, B the back that leans, C the ear that hangs. S1: standing on its floor; S2: tipped up on its front edge.
            feature,kind,on,from,to,x,y,z,way,size
            A,face,,,,40,25,0,up
            B,face,,,,40,55,20,front
            C,face,,,,81,25,-15,right
            S1,set-up,,,,0,0,-40,up
            S2,set-up,,,,0,-10,0,back

            """.ReplaceLineEndings("\n"));
        foreach (var (id, at) in True.Where(t => t.Key[0] == 'P')) Line($"{id},corner,{s_face[id]},,,{Rough(at)}");
        foreach (var (id, at) in True.Where(t => t.Key[0] == 'H')) Line($"{id},hole,{s_face[id]},,,{Rough(at)},,{Diameters[id]:0}");
        foreach (var (id, a, b) in Edges) Line($"{id},edge,,{a},{b}");
        Line("");
    }

    void Readings(double slip)
    {
        Line("kind,from,to,value,instrument,pin,note");
        foreach (var (id, a, b) in Edges.Where(e => e.Id is not "E5" and not "E6" and not "E7")) Line($"length along edge,{id},,{Read(Distance(a, b))},calliper");
        foreach (var (a, b) in new[] { ("P1", "P3"), ("P2", "P4"), ("P2", "P8"), ("P3", "P7"), ("P1", "P5"), ("P2", "P6"), ("P6", "P7"), ("P1", "P8") }) Line($"distance,{a},{b},{Read(Distance(a, b))},calliper");
        Line($"inside between holes,H1,H2,{Read(Distance("H1", "H2") - (Diameters["H1"] + Diameters["H2"]) / 2)},calliper");
        foreach (var (a, b) in new[] { ("H1", "P1"), ("H1", "P4"), ("H1", "P2"), ("H2", "P2"), ("H2", "P3"), ("H2", "P1"), ("H4", "P7"), ("H4", "P8"), ("H4", "P3") })
            Line($"distance,{a},{b},{Read(Distance(a, b))},± 0.08,,with a cone in the hole");
        foreach (var id in new[] { "H1", "H2", "H4" }) Line($"diameter,{id},,{Read(Diameters[id])},calliper");
        foreach (var (id, up, height) in s_setUps)
            foreach (var (p, at) in True.Where(t => t.Key[0] == 'P'))
                Line($"height,{p},{id},{Read(at.Dot(up) + height + (p == "P6" && id == "S1" ? slip : 0))},height gauge");
        foreach (var (p, face) in new[] { ("P3", "B"), ("P4", "B"), ("P2", "C"), ("P3", "C") }) Line($"on,{p},{face},,,,the bend's end is on both faces");
        Line($"angle,A,B,{Angle(BackAngle)}°,protractor");
        Line($"angle,A,C,{Angle(EarAngle)}°,protractor");
        Line("");
    }

    /// <summary>The back, surveyed flat: its corners and hole bear the same names.</summary>
    void BackFlat()
    {
        Line("on face,B,,right");
        Line("feature,kind,from,to,x,y");
        foreach (var (id, x, y) in new[] { ("P4", 0, 0), ("P3", 80, 0), ("P6", 70, 40), ("P5", 10, 40) }) Line($"{id},corner,,,{x},{y}");
        Line("H3,hole,,,40,22");
        Line("");
        Line("kind,from,to,value,instrument");
        foreach (var (a, b) in new[] { ("P4", "P5"), ("P5", "P6"), ("P6", "P3"), ("P4", "P6"), ("P3", "P5") }) Line($"centre distance,{a},{b},{Read(Distance(a, b))},calliper");
        foreach (var p in new[] { "P5", "P6" }) Line($"outside over holes,H3,{p},{Read(Distance("H3", p) + Diameters["H3"] / 2)},calliper");
        foreach (var p in new[] { "P3", "P4" }) Line($"centre distance,H3,{p},{Read(Distance("H3", p))},± 0.08");
        Line($"diameter,H3,,{Read(Diameters["H3"])},calliper");
    }

    string Read(double value) => (Math.Round((value + Std * _chance.Normal()) / 0.02) * 0.02).ToString("0.00", CultureInfo.InvariantCulture);

    string Angle(double radians) => Math.Round(radians * 180 / Math.PI + 0.4 * _chance.Normal()).ToString(CultureInfo.InvariantCulture);

    string Rough(Vec3 p) => string.Create(CultureInfo.InvariantCulture, $"{Near(p.X)},{Near(p.Y)},{Near(p.Z)}");

    // No minus before a nought.
    double Near(double v) => Math.Round(v + 2 * _chance.Uniform(-1, 1)) + 0.0;

    void Line(FormattableString words) => _sheet.Append(words.ToString(CultureInfo.InvariantCulture)).Append('\n');

    void Line(string words) => _sheet.Append(words).Append('\n');
}
