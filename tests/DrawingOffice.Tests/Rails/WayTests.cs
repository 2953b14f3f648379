using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

[Truth(Grade.Property, "what is cut away or opened is what the strain takes up; the ways are told from each other by their limits")]
public class WayTests
{
    static readonly BendMethod Method = new NeutralAxis(0.4);

    static MadeRail Make(Rail rail, int proposal = 1) => MadeRail.Of(rail, Method, 28, proposal).Value;

    static Rail Straight(RailKind kind = RailKind.C) => new("straight", kind, 2, 3, [Made.At(0), Made.At(400)]);

    [Fact]
    public void A_straight_rail_is_folded_in_one_piece()
    {
        var made = Make(Straight());
        Assert.All(made.Chosen, w => Assert.Equal(WayKind.Fold, w.Kind));
        var blank = Assert.Single(made.Kit.Pieces);
        // Outside 35 + 80 + 35 less two deductions of 2·5 − 5.969.
        Assert.Equal(400 * (150 - 2 * (10 - Math.PI / 2 * 3.8)), blank.Area, 6);
        Assert.Empty(made.Kit.Seams);
    }

    [Fact]
    public void Notches_take_away_what_the_edge_must_shrink()
    {
        var rail = Made.Swept(250, -0.6, RailKind.L);
        rail = rail with { Stations = [.. rail.Stations.Select(s => s with { Level = -s.Level })] };
        var at = Enumerable.Range(1, 4).First(n => Make(rail, n).Chosen[0].Kind == WayKind.Notch);
        var made = Make(rail, at);
        var way = made.Chosen[0];
        var change = made.Strains[0].Spans.Sum(s => s.Change);
        Assert.True(change < -5);
        Assert.Equal(-change, way.Cuts * way.CutWidth, 9);
        Assert.True(way.CutWidth <= 8 + 1e-9);
        // Triangles with curved mouths: half width times depth each, to a part in ten.
        var whole = Make(rail, Enumerable.Range(1, 4).First(n => Make(rail, n).Chosen[0].Kind == WayKind.Fold)).Kit.Pieces[0].Area;
        Assert.InRange((whole - made.Kit.Pieces[0].Area) / (way.Cuts * way.CutWidth * way.CutDepth / 2), 0.9, 1.1);
    }

    [Fact]
    public void What_stretches_more_than_the_metal_bears_is_not_hammered()
    {
        var made = Make(Made.Swept(130, -0.8, RailKind.L));
        Assert.True(made.Strains[0].Stretch > 28.0 * 2 / 300);
        Assert.False(made.Ways[0].Ways.Single(w => w.Kind == WayKind.Hammer).Reachable);
        Assert.True(made.Chosen[0].Reachable);
    }

    [Fact]
    public void A_flange_of_its_own_piece_keeps_the_length_it_has_on_the_rail()
    {
        var rail = Made.Swept(300, 0.4, RailKind.L);
        var made = Make(rail, Enumerable.Range(1, 4).First(n => Make(rail, n).Chosen[0].Kind == WayKind.Separate));
        var flange = made.Kit.Pieces[1];
        // Flange square to the web: a straight strip as long as its middle layer, a half thickness inside the lower outside edge.
        Assert.Equal((2 * 150 + 0.4 * (300 - 1)) * 35, flange.Area, 6);
        Assert.Equal(SeamKind.Corner, made.Kit.Seams[0].Kind);
    }

    [Fact]
    public void The_right_hand_is_the_left_in_a_mirror()
    {
        var left = Make(Made.Swept(400, 0.2));
        var right = Make(Made.Swept(400, 0.2) with { Hand = Hand.Right });
        Assert.Equal(left.Kit.Shape!.Volume, right.Kit.Shape!.Volume, 4);
        foreach (var (l, r) in left.Kit.Pieces.Zip(right.Kit.Pieces))
        {
            Assert.Equal(l.Outline.SignedArea, r.Outline.SignedArea, 6);
            foreach (var c in l.Outline.Corners) Assert.Contains(r.Outline.Corners, o => Math.Abs(o.At.X + c.At.X) < 1e-9 && Math.Abs(o.At.Y - c.At.Y) < 1e-9);
        }
        Assert.Equal(2 * left.Kit.Pieces[0].Count, Make(Made.Swept(400, 0.2) with { Hand = Hand.Both }).Kit.Pieces[0].Count);
    }

    [Fact]
    public void A_crease_in_plan_is_a_V_on_one_flange_and_a_slit_on_the_other()
    {
        var rail = new Rail("creased", RailKind.C, 2, 3, [Made.At(0), Made.At(200), Made.At(400) with { Plan = 40 }]);
        var made = Make(rail);
        var turn = Math.Atan(0.2);
        foreach (var strain in made.Strains)
            Assert.Equal(-turn * (Math.PI / 2 * 3.8 / 2 + 30), Assert.Single(strain.Gaps).Width, 9);
        Assert.Contains(made.Kit.Pieces[0].Creases, c => Math.Abs(c.Angle - turn) < 1e-9);
        Assert.Equal(2, made.Kit.Seams.Length);
    }

    [Fact]
    public void A_former_fills_the_rail_from_fold_to_fold()
    {
        var rail = Made.Swept(600, 0.2);
        var at = Enumerable.Range(1, 4).First(n => Make(rail, n).Chosen[0].Kind == WayKind.Hammer);
        var former = Assert.Single(Make(rail, at).Kit.Formers);
        // 80 less a thickness on each side, as high as the flange less the web's thickness.
        Assert.InRange(former.Shape.Volume / ((80 - 4) * 33 * (300 + 0.2 * (600 - 40))), 0.9999, 1.0001);
    }
}
