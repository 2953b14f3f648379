using CsCheck;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.Geometry;

public class LoopTests
{
    [Fact]
    [Truth(Grade.Property, "area of circle, half circle and lens from elementary geometry")]
    public void Areas_of_arcs_are_exact()
    {
        Assert.Equal(Math.PI * 25, Loop.Circle(new(1000, -2000), 5).SignedArea, 1e-10);
        var half = new Loop([new(new(-3, 0)), new(new(3, 0), 1)]);
        Assert.Equal(Math.PI * 9 / 2, half.SignedArea, 1e-12);
        // Two quarter circles of radius 2 about opposite corners of a square.
        var quarter = Math.Tan(Math.PI / 8);
        Assert.Equal(2 * (Math.PI - 2), new Loop([new(new(2, 0), quarter), new(new(0, 2), quarter)]).SignedArea, 1e-12);
    }

    [Fact]
    public void Chords_stay_within_the_error_asked_for_and_the_area_follows()
    {
        Gen.Select(Gen.Double[0.1, 50], Gen.Double[0.001, 0.5]).Sample((radius, error) =>
        {
            var circle = Loop.Circle(new(3, 4), radius);
            var points = circle.Flatten(error);
            for (var i = 0; i < points.Length; i++)
            {
                var middle = 0.5 * (points[i] + points[(i + 1) % points.Length]);
                Assert.InRange(radius - middle.DistanceTo(new(3, 4)), 0, error * (1 + 1e-9));
                Assert.Equal(radius, points[i].DistanceTo(new(3, 4)), 1e-9);
            }
        });
    }

    [Fact]
    public void Walked_the_other_way_the_area_changes_sign_and_the_arcs_stay()
    {
        var loop = new Loop([new(new(0, 0)), new(new(10, 0), 0.3), new(new(8, 7), -0.2), new(new(1, 6))]);
        Assert.Equal(-loop.SignedArea, loop.Reversed().SignedArea, 1e-12);
        Assert.Equal(loop.SignedArea, loop.Reversed().Reversed().SignedArea, 1e-12);
    }

    [Fact]
    public void A_rounded_rectangle_loses_four_corners()
    {
        var rounded = Fillet.Round([new(0, 0), new(30, 0), new(30, 20), new(0, 20)], [4, 4, 4, 4]).Value;
        Assert.Equal(600 - (4 - Math.PI) * 16, rounded.SignedArea, 1e-10);
        Assert.False(Fillet.Round([new(0, 0), new(30, 0), new(30, 20), new(0, 20)], [11, 0, 0, 11]).Ok);
    }
}
