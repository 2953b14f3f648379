using System.Text.Json;
using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

/// <summary>tests/DrawingOffice.Tests/truth/rails-kernel/README.md says where the figures come from.</summary>
[Truth(Grade.SecondImplementation, "replicad-opencascadejs 1.1.0, a boundary-representation kernel: volume of a straight and of a swept C rail")]
public class KernelTests
{
    /// <summary>Folds by 48 chords, arcs within 0.05 mm of 300 mm: together under 1 in 10 000.</summary>
    const double Within = 1e-4;

    static double Of(string name, string field)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "tests", "DrawingOffice.Tests", "truth"))) folder = folder.Parent;
        using var all = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder!.FullName, "tests", "DrawingOffice.Tests", "truth", "rails-kernel", "rails.json")));
        return all.RootElement.EnumerateArray().Single(r => r.GetProperty("name").GetString() == name).GetProperty(field).GetDouble();
    }

    static double Volume(Rail rail) => RailBody.Of(RailForm.Of(rail, new NeutralAxis(0.4)).Value, [], 48).Volume;

    [Fact]
    public void A_straight_C_has_the_kernels_volume()
    {
        var rail = new Rail("straight", RailKind.C, 2, 3, [Made.At(0), Made.At(150), Made.At(400)]);
        Assert.InRange(Volume(rail) / Of("straight", "volume_mm3"), 1 - Within, 1 + Within);
    }

    [Fact]
    public void A_C_swept_round_an_arc_has_the_kernels_volume()
    {
        const double turn = 0.4;
        var expected = Of("straight", "volume_mm3") * 2 * 150 / 400 + Of("swept", "full_turn_volume_mm3") * turn / (2 * Math.PI);
        Assert.InRange(Volume(Made.Swept(300, -turn)) / expected, 1 - Within, 1 + Within);
    }

    [Fact]
    [Truth(Grade.Property, "Pappus: area of the section times the way of its centroid; both folds' volumes by the kernel's straight section")]
    public void A_cranked_Z_has_the_volume_of_its_section_along_its_web()
    {
        // A Z's centroid lies in the middle of its web whatever the flanges are, so a bend in plan keeps area times length.
        var straight = Volume(new Rail("straight", RailKind.Z, 2, 3, [Made.At(0), Made.At(100)])) / 100;
        Assert.InRange(Volume(Made.Cranked(400, 0.3)) / (straight * (300 + 400 * 0.3)), 1 - Within, 1 + Within);
    }
}
