using CsCheck;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

[Truth(Grade.Property, "Gauss' theorem over the closed surface against Pappus over each bend; a closed surface has two facets at each edge")]
public class FoldedBodyTests
{
    [Fact]
    public void The_body_is_closed_and_holds_the_metal_of_the_part()
    {
        Gen.ULong.Sample(seed =>
        {
            var tree = RandomTrees.Make(seed, 5);
            var body = FoldedBody.Of(tree, 0.001);
            // Chords within 0.001 mm of arcs some millimetres across: areas to some parts in 10⁴.
            Assert.InRange(body.Volume / Fold.Volume(tree), 0.9995, 1.0005);
            var open = body.Facets.Aggregate(new Maths.Vec3(), (s, f) => s + f.Normal);
            Assert.InRange(open.Length, 0, 1e-6);
        }, iter: 60);
    }
}
