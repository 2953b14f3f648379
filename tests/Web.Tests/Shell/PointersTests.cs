using WitnessMark.Maths;
using WitnessMark.Tests;
using WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

namespace WitnessMark.Web.Tests.Shell;

[Truth(Grade.Property, "what lies under a finger stays under it")]
public class PointersTests
{
    const double Wide = 800, Tall = 600;

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 25)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_wheel_keeps_the_place_under_the_mouse(int seed)
    {
        var chance = new Random(seed);
        var (view, mouse) = (AnyView(chance), AnyPlace(chance));
        var turned = view.Wheeled(chance.Next(-5000, 5000), Under(view, mouse));
        Near(Under(view, mouse), Under(turned, mouse), turned);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void One_finger_carries_along_what_lies_under_it(int seed)
    {
        var chance = new Random(seed);
        var (view, from, to) = (AnyView(chance), AnyPlace(chance), AnyPlace(chance));
        var (next, stroke) = Pointers.None.With(7, from).Along(7, to)!.Value;
        Near(Under(view, from), Under(Seen(stroke, view), to), view);
        Assert.Equal((to, from.DistanceTo(to)), (next.Down[7], stroke.Length));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Of_two_fingers_the_one_at_rest_keeps_its_place_and_the_other_what_lay_under_it(int seed)
    {
        var chance = new Random(seed);
        var (view, still) = (AnyView(chance), AnyPlace(chance));
        var way = new Vec2(chance.NextDouble() - 0.5, chance.NextDouble() - 0.5);
        var (from, to) = (still + way * 400, still + way * 400 * (0.6 + 0.8 * chance.NextDouble()));
        var seen = Seen(Pointers.None.With(1, still).With(2, from).Along(2, to)!.Value.Stroke, view);
        Near(Under(view, still), Under(seen, still), view);
        Near(Under(view, from), Under(seen, to), view);
    }

    [Fact]
    public void A_finger_that_is_not_down_moves_nothing_and_three_do_not_pinch()
    {
        var two = Pointers.None.With(1, new(0, 0)).With(2, new(100, 0));
        Assert.Null(two.Along(3, new(5, 5)));
        Assert.Null(two.With(3, new(50, 50)).Along(3, new(5, 5))!.Value.Stroke.Still);
        Assert.Equal(1, two.Without(2).Without(3).Count);
        // Fingers on one spot: no scale can be told.
        Assert.Equal(View.Usual, Seen(two.Along(2, new(0.5, 0))!.Value.Stroke, View.Usual));
    }

    static View Seen(Stroke stroke, View view) => stroke.Seen(view, view.Width / Wide, screen => Under(view, screen));

    /// <summary>What lies under a place of a window of this size.</summary>
    static Vec2 Under(View view, Vec2 screen) => view.Middle + new Vec2(screen.X - Wide / 2, Tall / 2 - screen.Y) * (view.Width / Wide);

    static View AnyView(Random chance)
    {
        var width = 20 * Math.Pow(10, 2 * chance.NextDouble());
        return new(new(chance.Next(-500, 500), chance.Next(-500, 500)), width, width * Tall / Wide);
    }

    static Vec2 AnyPlace(Random chance) => new(chance.NextDouble() * Wide, chance.NextDouble() * Tall);

    /// <summary>To a millionth of what is seen: a few roundings, and no more.</summary>
    static void Near(Vec2 wanted, Vec2 found, View view) => Assert.True(wanted.DistanceTo(found) < 1e-6 * Math.Max(1, view.Width), $"{wanted} became {found}");
}
