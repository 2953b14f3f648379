using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

public class MeshCheckTests
{
    static readonly BendMethod Method = new NeutralAxis(0.4);

    [Fact]
    [Truth(Grade.SecondImplementation, "as-rigid-as-possible flattening of a fine mesh of the formed faces")]
    public void The_blanks_of_faces_that_unroll_are_the_meshs()
    {
        foreach (var rail in new[] { Made.Swept(300, -0.4), Made.Cranked(300, 0.4) })
            foreach (var bound in MeshCheck.Of(RailForm.Of(rail, Method).Value))
            {
                Assert.True(bound.Flat.Settled);
                // The mesh's own chords: arcs in cells of 5 mm and less on 300 mm, (5/300)²/24 of 500 mm.
                Assert.InRange(bound.Outline, 0, 0.02);
                Assert.InRange(Math.Max(bound.Flat.Stretch, -bound.Flat.Shrink), 0, 1e-4);
            }
    }

    [Fact]
    [Truth(Grade.Property, "a strip of width h twisted by w radians a mm has strains of about (w h)²/24 to (w h)²/8 and no isometry")]
    public void A_turning_web_is_bounded_and_told()
    {
        var rail = new Rail("turning", RailKind.Z, 2, 3, [Made.At(0), Made.At(400) with { Turn = 0.3 }]);
        var made = MadeRail.Of(rail, Method, 28).Value;
        Assert.Contains(made.Kit.Cautions, c => c.Kind == CautionKind.OutsideRange);
        var web = MeshCheck.Of(made.Form)[0];
        var size = Math.Pow(0.3 / 400 * 70, 2);
        Assert.InRange(Math.Max(web.Flat.Stretch, -web.Flat.Shrink), size / 50, size / 2);
        Assert.InRange(web.Outline, 0.001, 1);
    }
}
