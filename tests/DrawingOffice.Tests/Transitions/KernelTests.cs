using System.Text.Json;
using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Transitions;

/// <summary>truth/transitions-kernel/README.md says where the figures come from.</summary>
public class KernelTests
{
    static readonly JsonSerializerOptions Snake = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    public sealed record ConeCase(double Base, double Top, double Height, double[] Offset, double VolumeMm3, double SkinMm2);

    public sealed record SaddleCase(double Main, double Branch, double Angle, double Offset, double Length, double BranchVolumeMm3, double TemplateMm2, double HoleMm2);

    public sealed record EndCase(string Shape, double Width, double Height, double Radius, double[][] Corners, double[] At, double[] Tilt, double Turn);

    public sealed record SkinCase(string Name, EndCase First, EndCase Second, double VolumeMm3, double SurfaceMm2);

    sealed record Cases(ConeCase[] Cones, SaddleCase[] Saddles, SkinCase[] Skins);

    static readonly Cases All = Read();

    static Cases Read()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "tests", "truth"))) folder = folder.Parent;
        return JsonSerializer.Deserialize<Cases>(File.ReadAllText(Path.Combine(folder!.FullName, "tests", "DrawingOffice.Tests", "truth", "transitions-kernel", "shapes.json")), Snake)!;
    }

    public static TheoryData<int> ConeCases => [.. Enumerable.Range(0, All.Cones.Length)];

    public static TheoryData<int> SaddleCases => [.. Enumerable.Range(0, All.Saddles.Length)];

    public static TheoryData<string> SkinCases => [.. All.Skins.Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(ConeCases))]
    [Truth(Grade.SecondImplementation, "replicad-opencascadejs 1.1.0: area of ruled skins between parallel circles, upright and leaning")]
    public void The_blank_of_a_cone_has_the_kernels_area(int index)
    {
        var c = All.Cones[index];
        var offset = new Vec2(c.Offset[0], c.Offset[1]);
        // The kernel integrates a leaning surface to about 1e-6.
        Assert.InRange(new Cone(c.Base, c.Top, c.Height, offset).Area / c.SkinMm2, 1 - 2e-6, 1 + 2e-6);
        var made = Made.Of(new AskedCone("cone", 1, 2 * c.Base, 2 * c.Top, c.Height, offset) { Sizes = Surface.Mean, Error = 0.0005 }).Value;
        Assert.InRange(made.Kit.Pieces[0].Area / c.SkinMm2, 1 - 5e-5, 1 + 5e-5);
    }

    [Theory]
    [MemberData(nameof(SaddleCases))]
    [Truth(Grade.SecondImplementation, "replicad-opencascadejs 1.1.0: round faces of tubes cut with one another")]
    public void Template_and_hole_cover_what_the_kernel_cuts(int index)
    {
        var s = All.Saddles[index];
        var against = new AgainstTube(s.Main, s.Angle * Math.PI / 180, s.Offset);
        var template = Quadrature.Over(0, Math.Tau, t => (s.Length - against.Height(s.Branch, t)) * s.Branch);
        Assert.InRange(template / s.TemplateMm2, 1 - 1e-5, 1 + 1e-5);
        var asked = new AskedSaddle("saddle", 0.5, 2 * s.Branch + 1, s.Length, new(s.Main, 1), s.Angle * Math.PI / 180, s.Offset, Touching.Inside, false)
        {
            Sizes = Surface.Outside,
            Error = 0.0005,
            Wrapping = new(0, 10, 24),
        };
        var hole = HoleTemplate.Of(asked, s.Branch).Openings[0].Edge.Area;
        // The kernel follows the crossing of the tubes to some 2 µm, which is up to 2.3e-4 of these holes; the integral below is exact.
        Assert.InRange(hole / s.HoleMm2, 1 - 3e-4, 1 + 3e-4);
        var exact = Quadrature.Over(-Math.PI / 2, Math.PI / 2, t =>
        {
            var y = s.Offset + s.Branch * Math.Sin(t);
            return 2 * s.Branch * Math.Cos(t) / Math.Sin(asked.Angle) * s.Main / Math.Sqrt(s.Main * s.Main - y * y) * s.Branch * Math.Cos(t);
        });
        Assert.InRange(hole / exact, 1 - 3e-5, 1 + 3e-5);
    }

    [Theory]
    [MemberData(nameof(SkinCases))]
    [Truth(Grade.SecondImplementation, "quickhull3d 2.1.0: convex hulls of 720 points on each end")]
    public void A_tight_skin_is_the_hull_of_its_ends(string name)
    {
        var c = All.Skins.Single(s => s.Name == name);
        var (_, made) = Shapes.Skin(End(c.First), End(c.Second), 0.0005);
        Assert.InRange(Shapes.Volume(made.Strip) / c.VolumeMm3, 1 - 2e-5, 1 + 2e-5);
        Assert.InRange((Shapes.Area(made.Strip) + Shapes.Flat(made.Strip.First) + Shapes.Flat(made.Strip.Second)) / c.SurfaceMm2, 1 - 2e-5, 1 + 2e-5);
    }

    static End End(EndCase e) => Shapes.At(e.Shape switch
    {
        "rectangle" => new BoxForm(e.Width, e.Height, e.Radius),
        "polygon" => new PolygonForm([.. e.Corners.Select(c => new Vec2(c[0], c[1]))]),
        _ => new OvalForm(e.Width, e.Height),
    }, e.At[0], e.At[1], e.At[2], e.Tilt[0], e.Tilt[1], e.Turn);
}
