using System.Text.Json;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

/// <summary>tests/truth/reference-kernel/README.md says where the figures come from.</summary>
[Truth(Grade.SecondImplementation, "replicad-opencascadejs 1.1.0, a boundary-representation kernel: volume and surface of folded sections")]
public class KernelTests
{
    static readonly JsonSerializerOptions Snake = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    public sealed record Section(string Name, double Thickness, double Width, double[] Flats, Turn[] Bends, Drilled[] Holes, double VolumeMm3, double SurfaceMm2);

    public sealed record Turn(double Angle, double Radius);

    public sealed record Drilled(double X, double Z, double Diameter);

    public static TheoryData<string> Names => [.. Sections().Select(s => s.Name)];

    static Section[] Sections()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "tests", "truth"))) folder = folder.Parent;
        var file = Path.Combine(folder!.FullName, "tests", "truth", "reference-kernel", "folded-sections.json");
        return JsonSerializer.Deserialize<Section[]>(File.ReadAllText(file), Snake)!;
    }

    static FaceTree Tree(Section s)
    {
        var faces = s.Flats.Select((flat, i) => new Face($"f{i}", Loop.Rectangle(s.Width, flat),
            i == 0 ? [.. s.Holes.Select((h, k) => new RoundHole($"h{k}", new(h.Z, h.X), h.Diameter))] : [])).ToList();
        var bends = s.Bends.Select((b, i) => new Bend($"f{i}", new(s.Width, s.Flats[i]), new(0, s.Flats[i]), $"f{i + 1}", b.Angle * Math.PI / 180, b.Radius)).ToList();
        return FaceTree.Create(s.Name, s.Thickness, faces, bends).Value;
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Volume_agrees_with_the_kernel(string name)
    {
        var section = Sections().Single(s => s.Name == name);
        Assert.InRange(Fold.Volume(Tree(section)) / section.VolumeMm3, 1 - 1e-9, 1 + 1e-9);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Surface_of_the_body_that_is_drawn_agrees_with_the_kernel(string name)
    {
        var section = Sections().Single(s => s.Name == name);
        // Chords within 0.0005 mm of arcs of 1 mm and more: lengths of arcs to 2e-4 of themselves, less of the whole.
        var body = FoldedBody.Of(Tree(section), 0.0005);
        Assert.InRange(body.Surface / section.SurfaceMm2, 1 - 1e-4, 1 + 1e-4);
        Assert.InRange(body.Volume / section.VolumeMm3, 1 - 1e-4, 1 + 1e-4);
    }
}
