using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Fabrication;

public class TypedTests
{
    const string Good = """
        { "title": "corner", "thickness": "16 SWG", "inside_radius": 2, "points_on": "lower", "plus_minus": 0.4,
          "points": [{ "name": "A", "at": [0, 0, 0] }, { "name": "B", "at": ["4 in", 0, 0] }, { "name": "C", "at": ["4 in", 60, 0], "plus_minus": 0.1 }, { "name": "D", "at": [0, 60, 0] },
                     { "name": "E", "at": [0, 0, 40] }, { "name": "F", "at": [0, 60, 40] }],
          "faces": [{ "name": "web", "ring": "A B C D", "holes": [{ "name": "H", "at": [40, 30, 0], "diameter": 8 }] },
                    { "name": "lip", "ring": "A D F E", "slots": [{ "name": "S", "from": [0, 20, 20], "to": [0, 40, 20], "width": 6 }] }],
          "joints": [{ "first": "lip", "second": "web", "wish": "weld", "inside_radius": 3 }] }
        """;

    [Fact]
    [Truth(Grade.Property, "every field that is typed is found in the model, inch and gauge in mm, ± as two standard uncertainties")]
    public void A_typed_pressing_is_read_whole()
    {
        var p = PressingJson.Read(Good).Value;
        Assert.Equal(1.6256, p.Thickness, 9);
        Assert.Equal(101.6, p.Points[1].At.X, 9);
        Assert.Equal((0.2, 0.05), (p.Points[0].Std.X, p.Points[2].Std.Z));
        Assert.Equal(PointsOn.Lower, p.PointsOn);
        var model = FaceModel.Of(p).Value;
        Assert.Equal(JointWish.WeldOnly, model.Joints[0].Wish);
        Assert.Equal(3, model.Joints[0].InsideRadius);
        Assert.Equal(2, model.Faces.Sum(f => f.Openings.Length));
    }

    [Theory]
    [InlineData("\"thickness\": \"16 SWG\"", "\"thickness\": 0", "thickness")]
    [InlineData("\"lower\"", "\"inside\"", "points_on")]
    [InlineData("\"ring\": \"A D F E\"", "\"ring\": \"A D F X\"", "X")]
    [InlineData("\"diameter\": 8", "\"diameter\": 90", "H")]
    [InlineData("\"first\": \"lip\"", "\"first\": \"flap\"", "flap")]
    [InlineData("\"wish\": \"weld\"", "\"wish\": \"glue\"", "fold")]
    [InlineData("\"title\"", "\"titel\"", "titel")]
    [InlineData("\"at\": [0, 60, 40]", "\"at\": [0, 60]", "x, y and z")]
    [InlineData("\"name\": \"F\"", "\"name\": \"E\"", "own name")]
    [Truth(Grade.Property, "one sentence that names field and value")]
    public void What_is_wrong_is_named(string from, string to, string told)
    {
        Assert.Contains(from, Good);
        var read = PressingJson.Read(Good.Replace(from, to));
        var refused = read.Ok ? FaceModel.Of(read.Value).Refusal! : read.Refusal!;
        Assert.Contains(told, refused.Sentence);
        Assert.DoesNotContain('\n', refused.Sentence);
    }
}
