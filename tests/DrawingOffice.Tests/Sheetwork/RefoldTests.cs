using CsCheck;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

[Truth(Grade.Property, "folding the blank up again by an independent routine gives back the faces of the tree")]
public class RefoldTests
{
    static readonly BendMethod Method = new NeutralAxis(0.4);

    [Fact]
    public void A_blank_folds_back_to_the_points_it_came_from()
    {
        Gen.ULong.Sample(seed =>
        {
            var tree = RandomTrees.Make(seed);
            var refolded = Refold.Points(Develop.Blank(tree, Method, Relief.None).Value);
            var frames = Fold.Frames(tree);
            for (var i = 0; i < tree.Faces.Length; i++)
                for (var k = 0; k < tree.Faces[i].Outline.Count; k++)
                    Assert.True(refolded[tree.Faces[i].Id][k].DistanceTo(frames[i].Map(tree.Faces[i].Outline.Corners[k].At)) < 1e-9);
        }, iter: 400);
    }

    [Fact]
    public void No_metal_is_lost_or_counted_twice()
    {
        Gen.ULong.Sample(seed =>
        {
            var tree = RandomTrees.Make(seed);
            foreach (var relief in new[] { Relief.None, Relief.Usual(tree.Thickness) })
                Assert.InRange(Develop.Blank(tree, Method, relief).Value.AreaImbalance, -1e-11, 1e-11);
        }, iter: 400);
    }

    [Fact]
    public void A_bend_not_yet_made_lies_where_the_blank_shows_it()
    {
        Gen.ULong.Sample(seed =>
        {
            var tree = RandomTrees.Make(seed);
            var blank = Develop.Blank(tree, Method, Relief.None).Value;
            var flat = Fold.Frames(tree, _ => 0, i => blank.BendLines[i].Allowance.Length);
            for (var i = 0; i < tree.Faces.Length; i++)
            {
                var corner = flat[i].Map(tree.Faces[i].Outline.Corners[1].At);
                Assert.InRange(new Vec2(corner.X, corner.Y).DistanceTo(blank.Faces[i].Outline.Corners[1].At), 0, 1e-9);
                Assert.InRange(corner.Z, -1e-9, 1e-9);
            }
        }, iter: 100);
    }

    [Fact]
    public void A_deep_tree_keeps_its_points()
    {
        // A strip folded back and forth 200 times: the error of a chain grows with its length and must stay under 1e-9 mm.
        var tree = Strips.Zigzag(200);
        var refolded = Refold.Points(Develop.Blank(tree, Method).Value);
        var frames = Fold.Frames(tree);
        var worst = tree.Faces.Select((f, i) => refolded[f.Id][2].DistanceTo(frames[i].Map(f.Outline.Corners[2].At))).Max();
        Assert.InRange(worst, 0, 1e-9);
    }
}

static class Strips
{
    public static FaceTree Zigzag(int faces)
    {
        var list = Enumerable.Range(0, faces).Select(i => new Face($"f{i}", Loop.Rectangle(30, 20), [])).ToList();
        var bends = Enumerable.Range(1, faces - 1).Select(i => new Bend($"f{i - 1}", new(30, 20), new(0, 20), $"f{i}", i % 2 == 0 ? 1.2 : -1.2, 2)).ToList();
        return FaceTree.Create("zigzag", 1.5, list, bends).Value;
    }
}
