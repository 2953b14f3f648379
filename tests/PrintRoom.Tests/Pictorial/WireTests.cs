using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests.Pictorial;

public class WireTests
{
    static readonly Facet s_square = Facet.Of(new Vec3(0, 0, 0), new Vec3(10, 0, 0), new Vec3(10, 0, 10), new Vec3(0, 0, 10));

    [Fact]
    [Truth(Grade.Property, "a line behind a sheet is dashed just where the sheet covers it, from whichever side; before it it is whole")]
    public void A_sheet_hides_what_it_covers()
    {
        var line = Wire.Line(new(-5, 3, 5), new(15, 3, 5), Layers.Outline);
        var marks = WireDrawing.Draw([line], [s_square], Sight.Front).Cast<LineMark>().ToList();
        var hidden = Assert.Single(marks, m => m.Layer == Layers.Hidden);
        Assert.Equal([0, 10], new[] { hidden.A.X, hidden.B.X }.Order().Select(x => Math.Round(x, 9)));
        Assert.Equal(10, marks.Where(m => m.Layer != Layers.Hidden).Sum(m => m.A.DistanceTo(m.B)), 1e-9);
        Assert.Single(WireDrawing.Draw([line], [s_square], Sight.Turned(Math.PI, 0)));
        var before = Wire.Line(new(-5, -3, 5), new(15, -3, 5), Layers.Outline);
        Assert.Single(WireDrawing.Draw([before], [s_square], Sight.Front));
    }

    [Fact]
    [Truth(Grade.Property, "what lies behind a sheet by less than the lift counts as lying on it")]
    public void A_hole_lies_on_its_own_face_though_measured_a_little_behind_it()
    {
        var hole = Wire.Circle(new(new(5, 0.2, 5), new(0, 1, 0), 2), Layers.Holes);
        Assert.Equal(2, Assert.IsType<CircleMark>(Assert.Single(WireDrawing.Draw([hole], [s_square], Sight.Front, lift: 0.5))).Radius);
        Assert.DoesNotContain(WireDrawing.Draw([hole], [s_square], Sight.Front), m => m is CircleMark);
    }

    [Theory]
    [Truth(Grade.Property, "a circle tipped by an angle is an ellipse with the cosine of it, long axis across the tip; edge-on a line of its diameter")]
    [InlineData(0)]
    [InlineData(0.4)]
    [InlineData(1.2)]
    public void A_tipped_circle_is_an_ellipse(double tip)
    {
        var mark = Assert.Single(WireDrawing.Draw([Wire.Circle(new(Vec3.Zero, new Vec3(0, Math.Cos(tip), Math.Sin(tip)), 3), Layers.Holes)], [], Sight.Front));
        if (tip == 0) Assert.Equal(3, Assert.IsType<CircleMark>(mark).Radius);
        else
        {
            var ellipse = Assert.IsType<EllipseMark>(mark);
            Assert.Equal(3, ellipse.HalfA, 1e-9);
            Assert.Equal(3 * Math.Cos(tip), ellipse.HalfB, 1e-9);
            Assert.Equal(0, Math.Sin(ellipse.Turn), 1e-9);
        }
        var edgeOn = Assert.IsType<LineMark>(Assert.Single(WireDrawing.Draw([Wire.Circle(new(Vec3.Zero, new Vec3(0, 0, 1), 3), Layers.Holes)], [], Sight.Front)));
        Assert.Equal(6, edgeOn.A.DistanceTo(edgeOn.B), 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "the two directions of the paper and the one to the eye are square to one another, right-handed, for any turn and tip")]
    public void Every_sight_is_square()
    {
        foreach (var sight in new[] { Sight.Front, Sight.Above, Sight.FromLeft, Sight.FromRight, Sight.Isometric, Sight.Turned(2.3, -0.7), Sight.Turned(-0.4, 1.5) })
        {
            Assert.Equal((1.0, 1.0, 0.0), (Math.Round(sight.Right.Length, 12), Math.Round(sight.Up.Length, 12), Math.Round(Math.Abs(sight.Right.Dot(sight.Up)), 12)));
            Assert.True(sight.Near.DistanceTo(sight.Right.Cross(sight.Up)) < 1e-12);
        }
        Assert.True(Sight.Isometric.Near.DistanceTo(new Vec3(1, -1, 1).Unit) < 1e-9);
    }
}
