using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Fabrication;

public class FaceModelTests
{
    const double Degree = Math.PI / 180;

    static readonly (string, Vec3)[] Square = [("A", new(0, 0, 0)), ("B", new(100, 0, 0)), ("C", new(100, 60, 0)), ("D", new(0, 60, 0)), ("E", new(100, 0, 40)), ("F", new(100, 60, 40)), ("G", new(100, 0, -40)), ("H", new(100, 60, -40))];

    [Fact]
    [Truth(Grade.Published, "the regular tetrahedron's dihedral arccos(1/3) and the cosine rule of two normals, as textbooks and public encyclopedias give them")]
    public void Faces_of_a_tetrahedron_meet_at_its_known_angle()
    {
        (string, Vec3)[] points = [("A", new(1, 1, 1)), ("B", new(1, -1, -1)), ("C", new(-1, 1, -1)), ("D", new(-1, -1, 1))];
        var model = FaceModel.Of(Pressings.Of(1, [.. points.Select(p => (p.Item1, p.Item2 * 40))], ("one", "A B C"), ("two", "A D B"), ("three", "A C D"))).Value;
        Assert.Equal(3, model.Joints.Length);
        foreach (var j in model.Joints) Assert.Equal(Math.Acos(1 / 3.0), j.SettingAngle, 12);
    }

    [Theory]
    [InlineData("B E F C", 90)]
    [InlineData("C F E B", 90)]
    [InlineData("B C H G", -90)]
    [Truth(Grade.Property, "a lip to the side the first face is seen from bends up, whichever way its ring is typed")]
    public void A_lip_bends_to_the_side_it_lies_on(string ring, double degrees)
    {
        var model = FaceModel.Of(Pressings.Of(1, Square, ("web", "A B C D"), ("lip", ring))).Value;
        Assert.Equal(degrees * Degree, model.Joints[0].Bend, 12);
        Assert.Equal(60, model.Joints[0].Length, 12);
    }

    [Theory]
    [InlineData("three faces share", "B E F C|C B G H")]
    [InlineData("does not close", "B E")]
    [InlineData("goes through this point twice", "B E F E C")]
    [InlineData("name one of the points", "B E Z C")]
    [InlineData("crosses itself", "B F E C")]
    [InlineData("off the plane", "B E F K")]
    [InlineData("on one line", "A B X")]
    [Truth(Grade.Property, "each fault is told by a sentence of its own, and nothing is made")]
    public void What_is_wrong_with_a_ring_is_named(string told, string rings)
    {
        var points = Square.Append(("K", new Vec3(103, 60, 0))).Append(("X", new Vec3(200, 0, 0))).ToArray();
        (string, string)[] faces = [("web", "A B C D"), .. rings.Split('|').Select((r, i) => ($"lip{i}", r))];
        var refused = FaceModel.Of(Pressings.Of(1, points, faces)).Refusal!.Sentence;
        Assert.Contains(told, refused);
    }

    [Fact]
    [Truth(Grade.Property, "a face that cuts through another, and one that shares no edge, are named")]
    public void Faces_that_cross_or_stand_apart_are_named()
    {
        (string, Vec3)[] crossing = [.. Square, ("P", new(100, 10, 40)), ("Q", new(100, 50, 40)), ("R", new(50, 50, -40)), ("S", new(50, 10, -40))];
        Assert.Contains("cross and web", FaceModel.Of(Pressings.Of(1, crossing, ("web", "A B C D"), ("lip", "B E P Q F C"), ("cross", "P Q R S"))).Refusal!.Sentence);
        Assert.Contains("shares no edge", FaceModel.Of(Pressings.Of(1, [.. Square, ("P", new(300, 0, 0)), ("Q", new(320, 0, 0)), ("R", new(320, 20, 0))], ("web", "A B C D"), ("far", "P Q R"))).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "points off their planes by tenths are made flat: afterwards every point lies on its planes to 1e-8 mm and moved no farther than it was off, times three")]
    public void Rough_points_are_made_flat_and_how_far_they_were_off_is_said()
    {
        var chance = new Chance(7);
        for (var round = 0; round < 40; round++)
        {
            var true_ = Pressings.Tray(4, 100, 50, 12, 1.2, [true, true, true, true], [true, false, true, false]);
            var rough = true_ with { Points = [.. true_.Points.Select(p => p with { At = p.At + new Vec3(chance.Normal(), chance.Normal(), chance.Normal()) * 0.08 })] };
            var model = FaceModel.Of(rough).Value;
            Assert.InRange(model.OffPlane, 0.001, 0.5);
            Assert.NotEmpty(model.Cautions);
            foreach (var f in model.Faces)
                foreach (var i in f.Ring) Assert.InRange(Math.Abs(f.Frame.Local(model.Points[i]).Z), 0, 1e-6);
            var moved = rough.Points.Select((p, i) => p.At.DistanceTo(model.Points[i])).Max();
            Assert.InRange(moved, 0, 1);
        }
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "numeric differentiation: each coordinate moved by ± 1e-4 mm and the whole model made anew; agreement to 1e-6 of the ±")]
    public void The_spread_of_a_setting_angle_follows_from_that_of_the_points()
    {
        var chance = new Chance(11);
        for (var round = 0; round < 25; round++)
        {
            var tray = Pressings.RandomTray(chance);
            tray = tray with { Points = [.. tray.Points.Select(p => p with { Std = new(chance.Uniform(0.02, 0.4), chance.Uniform(0.02, 0.4), chance.Uniform(0.02, 0.4)) })] };
            var model = FaceModel.Of(tray).Value;
            var joint = model.Joints[chance.Below(model.Joints.Length)];
            var variance = 0.0;
            for (var i = 0; i < tray.Points.Length; i++)
            {
                var std = tray.Points[i].Std;
                foreach (var (axis, s) in new[] { (new Vec3(1, 0, 0), std.X), (new Vec3(0, 1, 0), std.Y), (new Vec3(0, 0, 1), std.Z) })
                    variance += Math.Pow(s * (Fitted(tray, model, joint, i, axis * 1e-4) - Fitted(tray, model, joint, i, axis * -1e-4)) / 2e-4, 2);
            }
            Assert.Equal(1, joint.Std / Math.Sqrt(variance), 6);
        }
    }

    /// <summary>The angle between planes fitted by another road: through the ring by the normal equations of z over x and y in the face's own frame.</summary>
    static double Fitted(Pressing p, FaceModel model, ModelJoint joint, int moved, Vec3 by)
    {
        var points = Pressings.Moved(p.Points, moved, by);
        Vec3 Normal(ModelFace f)
        {
            var local = f.Ring.Select(i => f.Frame.Local(points[i].At)).ToArray();
            var design = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfRows(local.Select(q => new[] { q.X, q.Y, 1 }));
            var solved = design.QR().Solve(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.DenseOfEnumerable(local.Select(q => q.Z)));
            return f.Frame.Turn(new Vec3(-solved[0], -solved[1], 1)).Unit;
        }
        return Math.Acos(Normal(model.Faces[joint.First]).Dot(Normal(model.Faces[joint.Second])));
    }

    [Fact]
    [Truth(Grade.Property, "a covariance of independent points gives the same ±; one that moves all points together gives none")]
    public void A_covariance_is_honoured()
    {
        var tray = Pressings.Tray(4, 100, 50, 12, 1.2, [true, true, true, true], [false, false, false, false]);
        tray = tray with { Points = [.. tray.Points.Select(p => p with { Std = new(0.2, 0.2, 0.2) })] };
        var n = 3 * tray.Points.Length;
        var apart = tray with { Covariance = [.. Enumerable.Range(0, n * n).Select(i => i / n == i % n ? 0.04 : 0)] };
        var together = tray with { Covariance = [.. Enumerable.Range(0, n * n).Select(i => i / n % 3 == i % n % 3 ? 0.04 : 0)] };
        var std = FaceModel.Of(tray).Value.Joints[0].Std;
        Assert.Equal(std, FaceModel.Of(apart).Value.Joints[0].Std, 12);
        Assert.InRange(FaceModel.Of(together).Value.Joints[0].Std, 0, 1e-7);
        Assert.InRange(std, 1e-4, 0.1);
    }

    [Theory]
    [InlineData(90)]
    [InlineData(60)]
    [InlineData(-30)]
    [InlineData(120)]
    [InlineData(-150)]
    [Truth(Grade.Property, "plane geometry of two sheets that meet edge to edge: their inner edges are one line, whichever surface was measured")]
    public void Welded_edges_meet_at_the_inner_corner(double degrees)
    {
        var (bend, t) = (degrees * Degree, 2.0);
        foreach (var on in Enum.GetValues<PointsOn>())
        {
            var inset = EdgeSetback.EdgeToEdge(bend, t, 0, on);
            // First sheet along −x, second turned up by the bend, z the upper side; the measured lines meet at the origin.
            var measured = on switch { PointsOn.Upper => t / 2, PointsOn.Lower => -t / 2, _ => 0 };
            var inner = Math.Sign(bend) * t / 2 - measured;
            var first = new Vec2(-inset, inner);
            var second = new Vec2(inset, inner).Turned(bend);
            Assert.InRange(first.DistanceTo(second), 0, 1e-12);
        }
    }

    [Theory]
    [InlineData(90)]
    [InlineData(70)]
    [InlineData(110)]
    [Truth(Grade.Property, "plane geometry: the face that stops meets the other's inner face and does not enter it")]
    public void A_lapped_edge_stops_at_the_other_face(double degrees)
    {
        var (bend, t) = (degrees * Degree, 3.0);
        var back = EdgeSetback.LappedAgainst(bend, t, 0, PointsOn.Middle);
        // Corners of the stopping sheet's edge: their height over the running sheet's inner face, of which the upper surface is the hollow one.
        var heights = new[] { t / 2, -t / 2 }.Select(z => new Vec2(back, z).Turned(bend).Y - t / 2).ToArray();
        Assert.InRange(heights.Min(), -1e-12, 1e-12);
        var through = EdgeSetback.LappedThrough(bend, t, PointsOn.Middle);
        var outer = new Vec2(-through, -t / 2);
        var outerLine = new Vec2(back, -t / 2).Turned(bend);
        var along = new Vec2(1, 0).Turned(bend);
        Assert.InRange(Math.Abs((outer - outerLine).Cross(along)), 0, 1e-9);
    }
}
