using System.Text.Json;
using WitnessMark.DrawingOffice.Beads;
using WitnessMark.DrawingOffice.Sections;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sections;

/// <summary>tests/DrawingOffice.Tests/truth/formed-kernel/README.md says where the figures come from.</summary>
[Truth(Grade.SecondImplementation, "replicad-opencascadejs 1.1.0, a boundary-representation kernel: second moments of folded sheets, metal in flanged holes")]
public class FormedKernelTests
{
    public sealed record Turn(double Angle, double Radius);

    public sealed record Sheet(string Name, double Thickness, double[] Flats, Turn[] Bends, double Area, double X, double Y, double Ix, double Iy, double Ixy);

    public sealed record Hole(double Inside, double Height, double Radius, double Thickness, double Volume);

    public sealed record Truth(Sheet[] Sections, Hole[] Holes);

    static readonly Truth Kernel = Read();

    static Truth Read()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "tests", "DrawingOffice.Tests", "truth"))) folder = folder.Parent;
        var file = Path.Combine(folder!.FullName, "tests", "DrawingOffice.Tests", "truth", "formed-kernel", "formed.json");
        return JsonSerializer.Deserialize<Truth>(File.ReadAllText(file), JsonSerializerOptions.Web)!;
    }

    static Chain Line(Sheet sheet)
    {
        var (at, turn) = (Vec2.Zero, 0.0);
        var corners = new List<Corner>();
        for (var i = 0; i < sheet.Flats.Length; i++)
        {
            if (sheet.Flats[i] > 0) corners.Add(new(at));
            at += Vec2.Polar(turn, sheet.Flats[i]);
            if (i == sheet.Bends.Length) break;
            var sweep = sheet.Bends[i].Angle * Math.PI / 180;
            corners.Add(new(at, Math.Tan(sweep / 4)));
            at += Vec2.Polar(turn + sweep / 2, 2 * sheet.Bends[i].Radius * Math.Sin(Math.Abs(sweep) / 2));
            turn += sweep;
        }
        return new([.. corners, new(at)]);
    }

    [Fact]
    public void Second_moments_agree_with_the_kernel()
    {
        Assert.Equal(4, Kernel.Sections.Length);
        foreach (var s in Kernel.Sections)
        {
            var p = SectionProperties.Of(new("", [new(s.Name, s.Thickness, Line(s))], [])).Value;
            Assert.InRange(p.Area / s.Area, 1 - 1e-9, 1 + 1e-9);
            Assert.Equal(0, p.Centroid.DistanceTo(new(s.X, s.Y)), 1e-8);
            Assert.InRange(p.Ix / s.Ix, 1 - 1e-8, 1 + 1e-8);
            Assert.InRange(p.Iy / s.Iy, 1 - 1e-8, 1 + 1e-8);
            Assert.Equal(s.Ixy, p.Ixy, 1e-8 * (s.Ix + s.Iy));
        }
    }

    [Fact]
    public void A_bead_stiffens_by_the_kernels_second_moment()
    {
        var truth = Kernel.Sections.Single(s => s.Name == "round bead");
        var rib = Rib.Of(new(BeadKind.Round, 3, 16, 300, 2), 0.9).Value;
        // The kernel's bead is typed with its slope to eight places.
        Assert.InRange(60 * Stiffness.Of(rib, 0.9, 60).Along / truth.Ix, 1 - 1e-6, 1 + 1e-6);
    }

    [Fact]
    public void Metal_in_flanged_holes_agrees_with_the_kernel()
    {
        Assert.Equal(3, Kernel.Holes.Length);
        foreach (var h in Kernel.Holes)
            Assert.InRange(HoleTooling.Volume(new("A", default, h.Inside, h.Height, h.Radius), h.Thickness) / h.Volume, 1 - 1e-9, 1 + 1e-9);
    }
}
