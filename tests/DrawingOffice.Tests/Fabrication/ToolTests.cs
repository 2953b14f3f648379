using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Fabrication;

public class ToolTests
{
    const double Degree = Math.PI / 180;

    /// <summary>Every edge is walked once each way: the body is closed.</summary>
    static void Closed(Body body)
    {
        var edges = new Dictionary<(string, string), int>();
        string Key(Vec3 p) => $"{Math.Round(p.X, 5):0.00000},{Math.Round(p.Y, 5):0.00000},{Math.Round(p.Z, 5):0.00000}".Replace("-0.00000", "0.00000");
        foreach (var loop in body.Facets.SelectMany(f => f.Loops))
            for (var i = 0; i < loop.Length; i++)
            {
                var (a, b) = (Key(loop[i]), Key(loop[(i + 1) % loop.Length]));
                edges[(a, b)] = edges.GetValueOrDefault((a, b)) + 1;
            }
        Assert.All(edges, e => Assert.Equal(1, edges.GetValueOrDefault((e.Key.Item2, e.Key.Item1))));
    }

    [Theory]
    [InlineData(97.5)]
    [InlineData(35)]
    [InlineData(150)]
    [Truth(Grade.Property, "area of triangle or kite less a circle's sector, times width, and the pin's cylinder; the body closed edge by edge")]
    public void An_angle_block_is_closed_and_of_the_right_volume(double degrees)
    {
        var angle = degrees * Degree;
        var tool = new AngleTool("tool", angle, 0.002, 60, 40, 5, new("H", 8.5, 30, 20));
        var kit = AngleBlock.Of(tool).Value;
        var body = kit.Formers.Single().Shape;
        Closed(body);
        var chord = 60 * Math.Cos(angle / 2);
        var area = (chord >= 20 ? 60 * 60 * Math.Sin(angle) / 2 : 60 * 20 * Math.Sin(angle / 2)) - 25 * angle / 2;
        var pin = Pins.For(8.5).Value.Nominal;
        Assert.Equal(area * 40 + Math.PI / 4 * pin * pin * 6, body.Volume, area * 40 * 2e-3);
        var plate = kit.Formers[0].Templates[0];
        Assert.Equal(area, plate.Area, 1e-9 * area);
        Assert.Equal(2, plate.Quantity);
    }

    [Fact]
    [Truth(Grade.Property, "the two working edges of the gauge plate stand at the setting angle and run to the apex")]
    public void The_edges_of_the_plate_hold_the_angle()
    {
        var outline = AngleBlock.Profile(new("tool", 112 * Degree, 0, 60, 40, 5, null));
        var (a, b) = (outline.End(0) - outline.Start(0), outline.Corners[^2].At - outline.Corners[^1].At);
        Assert.Equal(112 * Degree, Math.Acos(a.Unit.Dot(b.Unit)), 12);
        Assert.InRange(Math.Abs(outline.Start(0).Cross(a.Unit)), 0, 1e-12);
        Assert.InRange(Math.Abs(outline.Corners[^1].At.Cross(b.Unit)), 0, 1e-12);
    }

    [Fact]
    [Truth(Grade.Published, "ISO 286 f7 over 6 to 10 mm: −13 and −28 µm (public tables)")]
    public void A_pin_goes_into_its_hole_by_the_limits_of_the_standard()
    {
        var pin = Pins.For(8.5).Value;
        Assert.Equal(8.487, pin.Largest, 9);
        Assert.Equal(8.472, pin.Smallest, 9);
        Assert.False(Pins.For(8.5, "p6").Ok);
        Assert.False(Pins.For(2).Ok);
    }

    [Theory]
    [InlineData(90, 3, 30)]
    [InlineData(93.5, 2, 25)]
    [InlineData(120, 6, 40)]
    [InlineData(30, 10, 20)]
    [Truth(Grade.Property, "the form tool is closed; its nose takes away (tan(A/2) − A/2)·r² of the corner, and the front falls by the angle")]
    public void A_form_tool_has_its_nose_and_front(double degrees, double radius, double flange)
    {
        var angle = degrees * Degree;
        var sharp = new FormTool("tool", 1e-6, angle, flange, 100, null).ToKit().Value.Formers[0].Shape;
        var round = new FormTool("tool", radius, angle, flange, 100, new("H", 6, 40, 30)).ToKit();
        var body = round.Value.Formers[0].Shape;
        Closed(body);
        var pin = Pins.For(6).Value.Nominal;
        var expected = sharp.Volume - (Math.Tan(angle / 2) - angle / 2) * radius * radius * 100 + Math.PI / 4 * pin * pin * 6;
        Assert.InRange(body.Volume, expected - 60, expected + 60 + 0.03 * radius * 100);
        Assert.Contains(body.Facets, f => f.Loops.Length == 2 && Math.Abs(f.Normal.Unit.Y - 1) < 1e-9);
        Assert.Contains(body.Facets, f => Math.Abs(f.Normal.Unit.Dot(new Vec3(Math.Sin(angle), Math.Cos(angle), 0)) - 1) < 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "figures out of range are refused by name, and no tool is made")]
    public void Tools_out_of_range_are_refused()
    {
        var good = new AngleTool("tool", 90 * Degree, 0, 60, 40, 5, null);
        Assert.Contains("angle", AngleBlock.Of(good with { Angle = 179 * Degree }).Refusal!.Sentence);
        Assert.Contains("leg", AngleBlock.Of(good with { Leg = 8 }).Refusal!.Sentence);
        Assert.Contains("from_apex", AngleBlock.Of(good with { Hole = new("H", 8, 6, 20) }).Refusal!.Sentence);
        Assert.Contains("along", AngleBlock.Of(good with { Hole = new("H", 8, 30, 39) }).Refusal!.Sentence);
        Assert.Contains("flange", new FormTool("t", 5, 90 * Degree, 4, 50, null).ToKit().Refusal!.Sentence);
        Assert.Contains("from_apex", new FormTool("t", 5, 90 * Degree, 20, 50, new("H", 8, 6, 20)).ToKit().Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "a jig holds every drilled hole in place with its bush, pins the two holes that lie farthest apart, and is handed when asked")]
    public void A_jig_carries_the_hole_group()
    {
        var kit = DrillJig.Of("jig", [new("A", new(0, 0), 8, true), new("B", new(30, 5), 8, true), new("C", new(70, 10), 8, true), new("D", new(35, 40), 6)], true).Value;
        var plate = kit.Pieces.Single();
        Assert.True(plate.Handed);
        var round = plate.Openings.Cast<RoundHole>().ToDictionary(h => h.Id);
        Assert.Equal(["A", "C", "D"], round.Keys.Order());
        Assert.Equal(new Vec2(35, 40), round["D"].At);
        Assert.Equal(10, round["D"].Diameter);
        Assert.Equal(12, plate.Thickness);
        Assert.All(plate.Openings, o => Assert.All(o.Edge.Flatten(0.1), p => Assert.True(Plane2.Contains(plate.Outline.Flatten(0.1).AsSpan(), p))));
    }

    [Fact]
    [Truth(Grade.Property, "too few pins are cautioned; crowded bushes, bores past the list and a group of none are refused")]
    public void Jigs_that_cannot_be_are_refused()
    {
        Assert.Contains(DrillJig.Of("jig", [new("D", new(0, 0), 6)], false).Value.Cautions, c => c.Words.Contains("No hole"));
        Assert.Contains(DrillJig.Of("jig", [new("A", new(40, 0), 8, true), new("D", new(0, 0), 6)], false).Value.Cautions, c => c.Words.Contains("turn"));
        Assert.Contains("D and E", DrillJig.Of("jig", [new("D", new(0, 0), 6), new("E", new(11, 0), 6)], false).Refusal!.Sentence);
        Assert.Contains("30 mm", DrillJig.Of("jig", [new("D", new(0, 0), 36)], false).Refusal!.Sentence);
        Assert.Contains("at least one", DrillJig.Of("jig", [new("A", new(0, 0), 8, true)], false).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "the tool of a joint holds the joint's own angle and its pin stands at the hole's distance from the inner corner")]
    public void A_joint_gets_its_tool()
    {
        var tray = Pressings.Tray(4, 120, 60, 0, 2, [true, true, true, true], [false, false, false, false]) with { PointsOn = PointsOn.Middle };
        var wall = tray.Faces[1];
        Vec3 At(string name) => tray.Points.Single(p => p.Name == name).At;
        // 25 mm along the wall from its corner with the next, half way up.
        var corner = 0.5 * At("B1").X + 0.5 * At("T1").X;
        var middle = new Vec3(corner, 0.5 * At("B1").Y + 0.5 * At("T1").Y, 30);
        var towards = (At("B0") - At("B1")).Unit;
        tray = tray with { Faces = tray.Faces.SetItem(1, wall with { Holes = [new("H", middle + towards * 25, 8)] }) };
        var model = FaceModel.Of(tray).Value;
        var joint = model.Joints.Single(j => j.Name == "wall0-wall1");
        var tool = JointTool.Of(model, joint)!;
        Assert.Equal(joint.SettingAngle, tool.Angle);
        Assert.Equal(25 - 1, tool.Hole!.FromApex, 9);
        Assert.True(AngleBlock.Of(tool).Ok);
    }
}
