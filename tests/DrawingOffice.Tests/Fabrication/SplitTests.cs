using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.DrawingOffice.Tests.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Fabrication;

public class SplitTests
{
    static readonly BendMethod Method = new NeutralAxis(0.42);

    [Fact]
    [Truth(Grade.SecondImplementation, "every one of the 2ⁿ sets of folds of small trays tried whole, with its own forest test and its own sum of work")]
    public void The_first_split_is_the_least_work_of_all()
    {
        var (chance, tried) = (new Chance(2026), 0);
        for (var round = 0; round < 30; round++)
        {
            var model = FaceModel.Of(Pressings.RandomTray(chance)).Value;
            var shop = SheetShop.Usual with { ViceWidth = chance.Below(2) == 0 ? 0 : chance.Uniform(40, 160), SheetLength = chance.Uniform(260, 700), SheetWidth = chance.Uniform(260, 700) };
            var work = new SplitWork(chance.Uniform(0.02, 0.3), chance.Uniform(1, 9), chance.Uniform(2, 30), chance.Uniform(0, 15), chance.Uniform(0, 15));
            var found = Splitter.Find(model, shop, work, Method);
            // A face larger than the sheet is refused.
            if (!found.Ok) continue;
            tried++;
            var answer = found.Value;
            Assert.True(answer.Proven);
            Assert.Equal(Exhaustive(model, shop, work), answer.Choices[0].Work, 9);
            for (var i = 1; i < answer.Choices.Length; i++) Assert.True(answer.Choices[i].Work >= answer.Choices[i - 1].Work);
        }
        Assert.InRange(tried, 20, 30);
    }

    static double Exhaustive(FaceModel model, SheetShop shop, SplitWork work)
    {
        var (n, best) = (model.Joints.Length, double.PositiveInfinity);
        for (var set = 0; set < 1 << n; set++)
        {
            var folded = Enumerable.Range(0, n).Where(j => (set >> j & 1) == 1).ToArray();
            var minutes = 0.0;
            var possible = true;
            var groups = Groups(model, folded);
            foreach (var faces in groups)
            {
                var own = folded.Where(j => faces.Contains(model.Joints[j].First)).ToArray();
                if (own.Length != faces.Count - 1) possible = false;
                if (!possible) break;
                var made = Foldable.Try(model, [.. faces.Order()], own, shop, Method);
                if (made.Piece is null) possible = false;
                else minutes += work.Piece + made.Piece.InVice * work.ViceFold + own.Length * work.Fold;
            }
            if (!possible) continue;
            for (var j = 0; j < n; j++)
                if (!folded.Contains(j)) minutes += work.Seam + model.Joints[j].Length * work.PerWeld * WeldRules.Awkwardness(model.Joints[j], model.Pressing.Thickness);
            best = Math.Min(best, minutes);
        }
        return best;
    }

    static List<HashSet<int>> Groups(FaceModel model, int[] folded)
    {
        var groups = Enumerable.Range(0, model.Faces.Length).Select(f => new HashSet<int> { f }).ToList();
        foreach (var j in folded)
        {
            var (a, b) = (groups.First(g => g.Contains(model.Joints[j].First)), groups.First(g => g.Contains(model.Joints[j].Second)));
            if (ReferenceEquals(a, b)) continue;
            a.UnionWith(b);
            groups.Remove(b);
        }
        return groups;
    }

    [Fact]
    [Truth(Grade.Property, "a piece folded up again from its tree has every face in the plane and the outline of the model, less its setbacks")]
    public void Pieces_fold_up_into_the_pressing()
    {
        var chance = new Chance(5);
        for (var round = 0; round < 30; round++)
        {
            var pressing = Pressings.RandomTray(chance) with { PointsOn = (PointsOn)chance.Below(3) };
            var model = FaceModel.Of(pressing).Value;
            var answer = Splitter.Find(model, SheetShop.Usual, SplitWork.Usual, Method).Value;
            foreach (var piece in answer.Choices[0].Pieces)
            {
                var place = SplitKit.PlaceOf(model, piece);
                var frames = Fold.Frames(piece.Tree);
                for (var i = 0; i < frames.Length; i++)
                {
                    var face = model.Faces.Single(f => f.Name == piece.Tree.Faces[i].Id);
                    var middle = pressing.PointsOn switch { PointsOn.Upper => -pressing.Thickness / 2, PointsOn.Lower => pressing.Thickness / 2, _ => 0 };
                    foreach (var corner in piece.Tree.Faces[i].Outline.Corners)
                        Assert.InRange(Math.Abs(face.Frame.Local(place.Map(frames[i].Map(corner.At))).Z - middle), 0, 1e-8);
                    // A free edge of the face is where it was measured.
                    for (var s = 0; s < face.Sides.Length; s++)
                    {
                        if (face.Sides[s] >= 0) continue;
                        var half = 0.5 * (face.Outline[s] + face.Outline[(s + 1) % face.Outline.Length]);
                        var near = piece.Tree.Faces[i].Outline.Flatten(0.01).Select(c => face.Frame.Local(place.Map(frames[i].Map(c)))).Select(q => new Vec2(q.X, q.Y)).ToArray();
                        Assert.InRange(WitnessMark.Maths.Geometry.Plane2.Distance(near.AsSpan(), half, half), 0, 1e-8);
                    }
                }
            }
        }
    }

    [Fact]
    [Truth(Grade.Property, "a part that folds from one blank and is taken apart into faces comes back whole: metal within the chords of its arcs, length of bends to 1e-6 mm, angles to 1e-9")]
    public void A_folded_part_seen_as_a_pressing_comes_back_as_its_own_blank()
    {
        var (tried, shop) = (0, SheetShop.Usual with { Folder = null, ViceWidth = 1e4, ViceThickness = 10, SheetLength = 4000, SheetWidth = 4000 });
        for (ulong seed = 1; seed <= 500; seed++)
        {
            var tree = RandomTrees.Make(seed, 5);
            if (tree.Faces.Length < 2 || tree.Bends.Any(b => Math.Abs(b.Angle) is > 2.3 or < 0.2)) continue;
            var model = FaceModel.Of(FromFolded.Of(tree));
            // Flanges of a random tree may run through one another; that is refused, rightly.
            if (!model.Ok || !Develop.Blank(tree, Method).Value.Cautions.IsEmpty) continue;
            var all = Enumerable.Range(0, model.Value.Joints.Length).ToArray();
            var back = PieceTree.Of(model.Value, [.. Enumerable.Range(0, tree.Faces.Length)], all).Value;
            // Arcs have become chords within 0.05 mm.
            Assert.InRange(Fold.Volume(back) / Fold.Volume(tree), 0.999, 1 + 1e-9);
            Assert.Equal(tree.Bends.Sum(b => b.Length), back.Bends.Sum(b => b.Length), 6);
            Assert.Equal(tree.Bends.Select(b => Math.Abs(b.Angle)).Order(), back.Bends.Select(b => Math.Abs(b.Angle)).Order(), (a, b) => Math.Abs(a - b) < 1e-9);
            tried++;
        }
        Assert.InRange(tried, 10, 500);
    }

    [Fact]
    [Truth(Grade.Property, "a tray with four walls: one piece with the four corners welded, or fewer corners where a wall goes with its neighbour")]
    public void A_tray_is_folded_and_its_corners_welded()
    {
        var model = FaceModel.Of(Pressings.Tray(4, 120, 40, 0, 1, [true, true, true, true], [false, false, false, false])).Value;
        var best = Splitter.Find(model, SheetShop.Usual, SplitWork.Usual, Method).Value.Choices[0];
        Assert.Single(best.Pieces);
        Assert.Equal(4, best.Folded.Length);
        Assert.Equal(160, best.WeldLength, 6);
        Assert.All(best.Reasons, r => Assert.Contains("a ring cannot lie flat", r));
    }

    [Fact]
    [Truth(Grade.Property, "wishes are kept: fold only is folded, weld only welded, one piece stays in one piece")]
    public void Wishes_are_kept()
    {
        var tray = Pressings.Tray(4, 120, 40, 0, 1, [true, true, true, true], [false, false, false, false]);
        tray = tray with { Wishes = [new("wall0", "wall1", JointWish.FoldOnly), new("base", "wall2", JointWish.WeldOnly), new("base", "wall3", JointWish.OnePiece)] };
        var model = FaceModel.Of(tray).Value;
        var answer = Splitter.Find(model, SheetShop.Usual, SplitWork.Usual, Method).Value;
        foreach (var choice in answer.Choices)
        {
            Assert.Contains(model.Joints.Single(j => j.Name == "wall0-wall1").Index, choice.Folded);
            Assert.DoesNotContain(model.Joints.Single(j => j.Name == "base-wall2").Index, choice.Folded);
            Assert.Contains(choice.Pieces, p => p.Faces.Contains(0) && p.Faces.Contains(model.Faces.ToList().FindIndex(f => f.Name == "wall3")));
        }
    }

    [Fact]
    [Truth(Grade.Property, "stopped before it begins, the search still gives a split that can be made, and does not call it proven")]
    public void Stopped_it_gives_the_best_so_far()
    {
        var model = FaceModel.Of(Pressings.Tray(5, 120, 40, 10, 1, [true, true, true, true, true], [true, true, true, true, true])).Value;
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        // On a sheet this small the whole cannot be one blank, so that the first bound is out of reach.
        var answer = Splitter.Find(model, SheetShop.Usual with { SheetLength = 300, SheetWidth = 300 }, SplitWork.Usual, Method, stop: stop.Token).Value;
        Assert.False(answer.Proven);
        Assert.Equal(11, answer.Choices[0].Pieces.Sum(p => p.Faces.Length));
        Assert.True(answer.Bound <= answer.Choices[0].Work);
    }

    [Fact]
    [Truth(Grade.Property, "what the shop cannot do is told in the reason: too long for folder and vice, no room on the sheet")]
    public void Reasons_name_what_stands_in_the_way()
    {
        var model = FaceModel.Of(Pressings.Tray(4, 120, 40, 0, 1, [true, true, true, true], [false, false, false, false])).Value;
        var narrow = SheetShop.Usual with { Folder = Folder.Bench with { Length = 100 }, ViceWidth = 50 };
        Assert.All(Splitter.Find(model, narrow, SplitWork.Usual, Method).Value.Choices[0].Reasons, r => Assert.True(r.Contains("vice") || r.Contains("ring") || r.Contains("work"), r));
        var small = SheetShop.Usual with { SheetLength = 175, SheetWidth = 175 };
        Assert.Contains(Splitter.Find(model, small, SplitWork.Usual, Method).Value.Choices[0].Reasons, r => r.Contains("would not fit a sheet"));
        Assert.Contains("larger sheet", Splitter.Find(model, SheetShop.Usual with { SheetLength = 100, SheetWidth = 100 }, SplitWork.Usual, Method).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "the kit is whole: a blank for each piece, a seam for each weld, every face once, and the shape closed")]
    public void A_split_becomes_a_kit()
    {
        var tray = Pressings.Tray(4, 120, 40, 10, 1, [true, true, true, true], [true, false, true, false]);
        tray = tray with { Wishes = [new("base", "wall0", JointWish.WeldOnly)], Spots = [new("row", "lip2", "the chassis", 1, 6, 120)] };
        var model = FaceModel.Of(tray).Value;
        var choice = Splitter.Find(model, SheetShop.Usual, SplitWork.Usual, Method).Value.Choices[0];
        var kit = SplitKit.Of(model, choice).Value;
        Assert.Equal(choice.Pieces.Length, kit.Pieces.Length);
        Assert.Equal(model.Joints.Length - choice.Folded.Length + 1, kit.Seams.Length);
        Assert.NotEmpty(kit.Formers);
        Assert.Equal(choice.Pieces.Sum(p => Fold.Volume(p.Tree)), kit.Shape!.Volume, choice.Pieces.Sum(p => Fold.Volume(p.Tree)) * 1e-3);
        Assert.Contains(kit.Cautions, c => c.Words.Contains("tank"));
        Assert.Contains(kit.Seams, s => s is { Count: 6, Size: 8 });
    }
}
