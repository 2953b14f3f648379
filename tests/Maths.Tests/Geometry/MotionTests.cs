using CsCheck;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.Geometry;

[Truth(Grade.Property, "a rigid motion keeps distances; turning about a line leaves the line where it is")]
public class MotionTests
{
    static readonly Gen<Vec3> Point = Gen.Select(Gen.Double[-50, 50], Gen.Double[-50, 50], Gen.Double[-50, 50], (x, y, z) => new Vec3(x, y, z));

    [Fact]
    public void A_turn_keeps_distances_and_its_own_axis()
    {
        Gen.Select(Point, Point, Point, Gen.Double[-4, 4]).Sample((at, p, q, angle) =>
        {
            var along = (p - q + new Vec3(1e-3, 0, 0)).Unit;
            var turn = Motion3.About(at, along, angle);
            Assert.Equal(p.DistanceTo(q), turn.Map(p).DistanceTo(turn.Map(q)), 1e-9);
            Assert.InRange(turn.Map(at + along * 7).DistanceTo(at + along * 7), 0, 1e-9);
            Assert.InRange(Motion3.About(at, along, -angle).After(turn).Map(p).DistanceTo(p), 0, 1e-9);
            Assert.InRange(turn.Map(turn.Local(p)).DistanceTo(p), 0, 1e-9);
        });
    }

    [Fact]
    public void A_quarter_turn_about_z_takes_x_to_y() =>
        Assert.InRange(Motion3.About(Vec3.Zero, new(0, 0, 1), Math.PI / 2).Map(new Vec3(1, 0, 0)).DistanceTo(new(0, 1, 0)), 0, 1e-15);
}
