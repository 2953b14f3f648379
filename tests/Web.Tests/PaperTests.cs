using CsCheck;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Web.Client.DrawingOffice.Measure;
using WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

namespace WitnessMark.Web.Tests;

public sealed class PaperTests
{
    static readonly Gen<Vec2> Place = Gen.Select(Gen.Double[-500, 500], Gen.Double[-500, 500]).Select((x, y) => new Vec2(x, y));

    [Fact]
    public void Zooming_keeps_the_point_under_the_finger_where_it_is() => Gen.Select(Place, Place, Gen.Double[0.1, 10]).Sample((middle, finger, factor) =>
    {
        var view = new View(middle, 200, 150);
        var next = view.Zoomed(factor, finger);
        var before = (finger - view.Middle) / view.Width;
        var after = (finger - next.Middle) / next.Width;
        return before.DistanceTo(after) < 1e-9;
    });

    [Fact]
    public void Everything_is_in_sight_after_fitting() => Gen.Select(Place.Array[1, 20], Gen.Double[0.4, 3]).Sample((points, aspect) =>
    {
        var view = View.Around(points, aspect);
        return points.All(p => Math.Abs(p.X - view.Middle.X) <= view.Width / 2 && Math.Abs(p.Y - view.Middle.Y) <= view.Height / 2);
    });

    [Theory]
    [InlineData(0.03, 0.05)]
    [InlineData(1, 1)]
    [InlineData(1.01, 2)]
    [InlineData(16.7, 20)]
    [InlineData(99, 100)]
    public void Squares_are_round_numbers(double least, double round) => Assert.Equal(round, View.Round125(least), 12);

    [Fact]
    public void A_feature_keeps_its_words_on_the_way_to_the_records_and_back() =>
        Gen.Select(Gen.Enum<FeatureKind>(), Place, Gen.Double[0.1, 50]).Sample((kind, at, size) =>
        {
            var feature = new Feature("F1", kind) { Sketch = at, SketchSize = size, SketchTurn = 0.2, SketchLength = size, From = "C1", To = "C2" };
            return Spelling.Read(Spelling.Written(feature)) == feature;
        });

    [Fact]
    public void New_features_take_the_least_free_number() =>
        Assert.Equal("H2", Placing.Hole([new("H1", FeatureKind.Hole), new("h3", FeatureKind.Hole)], default).Id);
}
