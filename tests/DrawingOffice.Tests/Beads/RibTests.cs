using WitnessMark.DrawingOffice.Beads;
using WitnessMark.DrawingOffice.Sections;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Beads;

public class RibTests
{
    public static TheoryData<Bead> Beads =>
    [
        new Bead(BeadKind.Round, 4, 14, 300, 2, RunOut: 25),
        new Bead(BeadKind.Round, 7, 14, 300, 0.5, RunOut: 25),
        new Bead(BeadKind.Vee, 5, 20, 300, 2, 1.5, RunOut: 30),
        new Bead(BeadKind.Flat, 6, 40, 300, 3, 2, 22, 40),
        new Bead(BeadKind.Flat, 8, 30, 300, 1, 1, 30 - 1e-9),
        new Bead(BeadKind.Joggle, 1.5, 8, 300, 2, 2),
    ];

    [Theory]
    [MemberData(nameof(Beads))]
    [Truth(Grade.SecondImplementation, "length and height of the line walked in 100 000 chords")]
    public void Sheet_chord_and_depth_are_those_of_the_line_walked(Bead bead)
    {
        var rib = Rib.Of(bead, 0.9).Value;
        var line = rib.Line(50);
        var points = line.Flatten(1e-6);
        var walked = points.Zip(points.Skip(1), (a, b) => a.DistanceTo(b)).Sum();
        Assert.InRange(rib.Developed / walked, 1 - 1e-6, 1 + 1e-6);
        Assert.Equal(rib.Chord, line.End.X - line.Start.X, 1e-9);
        Assert.Equal(bead.Depth, points.Max(p => p.Y), 1e-5);
        Assert.Equal(50, (line.Start.X + line.End.X) / 2, 1e-9);
        // No kink anywhere: the sheet runs on.
        for (var i = 1; i < line.Count; i++) Assert.Equal(1, line[i - 1].EndsAlong.Dot(line[i].StartsAlong), 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "a half-round bead with sharp edges takes π/2 times its width")]
    public void A_half_round_bead()
    {
        // Thickness next to nothing, edges sharp: a half circle over 20 mm.
        var rib = Rib.Of(new(BeadKind.Round, 10, 20, 100, 0), 1e-9).Value;
        Assert.Equal(Math.PI * 10, rib.Developed, 1e-6);
        Assert.Equal(Math.PI / 2 - 1, rib.Stretch, 1e-7);
    }

    [Fact]
    [Truth(Grade.Property, "a V with sharp corners takes its two slopes, 2 √(10² + 7.5²) = 25")]
    public void A_sharp_vee() =>
        Assert.Equal(25, Rib.Of(new(BeadKind.Vee, 7.5, 20, 100, 0), 1e-9).Value.Developed, 1e-6);

    [Theory]
    [Truth(Grade.Property, "bad input is one sentence that names the field")]
    [InlineData(BeadKind.Round, 8, 14, 1, 0, 0, "bead, depth: \"8 mm\" is not accepted; a round bead 14 mm wide is at most 7 mm deep.")]
    [InlineData(BeadKind.Vee, 2, 14, 40, 40, 0, "bead, radii: ")]
    [InlineData(BeadKind.Flat, 2, 14, 1, 1, 0.2, "bead, top: ")]
    [InlineData(BeadKind.Flat, 2, 14, 1, 1, 15, "bead, top: \"15 mm\" is not accepted; it is narrower than the bead, 14 mm.")]
    [InlineData(BeadKind.Round, 0, 14, 1, 0, 0, "bead, depth: \"0\" is not accepted; give a length in mm, more than 0.")]
    [InlineData(BeadKind.Round, double.NaN, 14, 1, 0, 0, "bead, depth: \"NaN\" is not accepted; give a length in mm, more than 0.")]
    public void What_has_no_room_is_refused(BeadKind kind, double depth, double width, double edge, double crown, double top, string sentence) =>
        Assert.StartsWith(sentence, Rib.Of(new(kind, depth, width, 100, edge, crown, top), 1).Refusal!.Sentence);

    [Fact]
    [Truth(Grade.SecondImplementation, "strain along a half-cosine by 20 000 chords; von Mises of two equal strains is twice one of them")]
    public void Stretch_at_a_run_out()
    {
        double sum = 0, before = 0;
        for (var i = 1; i <= 20000; i++)
        {
            var z = 4 * RunOut.Depth(25 * i / 20000.0, 25);
            sum += Math.Sqrt(Math.Pow(25 / 20000.0, 2) + (z - before) * (z - before));
            before = z;
        }
        Assert.Equal(sum / 25 - 1, RunOut.Stretch(4, 25), 1e-8);
        Assert.Equal(Math.Pow(1.1, 2) - 1, RunOut.Together(0.1, 0.1), 1e-12);
        Assert.Equal(Math.Pow(1.1, 2 / Math.Sqrt(3)) - 1, RunOut.Together(0.1, 0), 1e-12);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "∫ y² over the same outline by 0.01 mm layers of a half-round corrugation without flats")]
    public void Stiffness_along_the_beads_is_the_second_moment_of_the_sheet()
    {
        var rib = Rib.Of(new(BeadKind.Round, 4, 14, 300, 2), 0.9).Value;
        var stiff = Stiffness.Of(rib, 0.9, 30);
        var line = new Chain([new(new(-15, 0)), .. rib.Line().Corners, new(new(15, 0))]);
        var polygon = line.Edges(0.9)[0].Flatten(1e-5);
        double n = 0, s = 0, q = 0;
        for (var y = -0.5 + 0.005; y < 5; y += 0.01)
        {
            var cuts = new List<double>();
            for (int i = 0, j = polygon.Length - 1; i < polygon.Length; j = i++)
                if (polygon[i].Y > y != polygon[j].Y > y) cuts.Add(polygon[i].X + (y - polygon[i].Y) / (polygon[j].Y - polygon[i].Y) * (polygon[j].X - polygon[i].X));
            cuts.Sort();
            var width = 0.0;
            for (var k = 0; k + 1 < cuts.Count; k += 2) width += cuts[k + 1] - cuts[k];
            (n, s, q) = (n + width * 0.01, s + width * y * 0.01, q + width * y * y * 0.01);
        }
        Assert.InRange(stiff.Along / ((q - s * s / n) / 30), 1 - 2e-4, 1 + 2e-4);
        Assert.InRange(stiff.Across / stiff.Plain, 30 / (30 + rib.Extra) - 1e-12, 1);
    }
}
