using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

[Truth(Grade.Property, "a hole is cut in the blank only where it comes true there; no cut of a flange runs through a hole unsaid")]
public class HoleCutTests
{
    // The rail turns down: its lower flange stretches or is slit, its upper shrinks or is notched.
    static MadeRail Make(RailFace face, double at, double across, Opening shape, WayKind lower)
    {
        var rail = new Rail("r", RailKind.C, 2, 3, [Made.At(0), Made.At(250) with { Ease = 300 }, Made.At(490) with { Level = -120 }]) { Holes = [new("A", face, at, AcrossFrom.Edge, across, shape)] };
        return Enumerable.Range(1, 4).Select(n => MadeRail.Of(rail, new Din6935(), 28, n).Value).First(m => m.Chosen[face == RailFace.UpperFlange ? 1 : 0].Kind == lower);
    }

    static RoundHole Round(double diameter) => new("A", Vec2.Zero, diameter);

    static IEnumerable<Caution> About(MadeRail made) => made.Kit.Cautions.Where(c => c.About.Contains("A"));

    [Fact]
    public void A_hole_in_a_hammered_flange_is_pricked_and_not_cut()
    {
        var made = Make(RailFace.LowerFlange, 250, 20, Round(10), WayKind.Hammer);
        Assert.Contains("after forming", Assert.Single(About(made)).Words);
        var blank = Assert.Single(made.Kit.Pieces);
        Assert.Empty(blank.Openings);
        var spot = Assert.Single(Assert.Single(blank.Witnesses, w => w.Words == "A: drill ⌀10 after forming").Line);
        Assert.Equal(((RoundHole)made.Holes[0].OnBlank).At, spot);
        Assert.Contains(made.Kit.Steps, s => s.Contains("A: drill ⌀10 after forming"));
    }

    [Theory]
    [InlineData(WayKind.Notch)]
    [InlineData(WayKind.Separate)]
    public void Where_the_way_takes_the_strain_away_the_hole_is_cut_and_no_strain_is_told(WayKind way)
    {
        var made = Make(RailFace.LowerFlange, 250, 20, Round(10), way);
        Assert.Single(made.Kit.Pieces.SelectMany(p => p.Openings));
        Assert.DoesNotContain(About(made), c => c.Words.Contains('%'));
    }

    [Theory]
    [InlineData(RailFace.UpperFlange, 20, 10)]
    [InlineData(RailFace.LowerFlange, 20, 10)]
    [InlineData(RailFace.UpperFlange, 25, 6)]
    public void A_cut_makes_way_for_a_hole_by_two_thicknesses_or_it_is_told(RailFace face, double across, double diameter)
    {
        var moved = 0;
        for (var at = 150; at <= 350; at += 5)
        {
            var made = Make(face, at, across, Round(diameter), WayKind.Notch);
            var blank = made.Kit.Pieces[0];
            var told = About(made).Any(c => c.Words.Contains("after the weld is dressed"));
            Assert.Equal(told, blank.Openings.IsEmpty);
            Assert.Equal(told, blank.Witnesses.Any(w => w.Words.Contains("after the weld is dressed")));
            var middle = ((RoundHole)made.Holes[0].OnBlank).At;
            var edge = blank.Outline.Flatten(0.01).ToArray();
            IEnumerable<double> cuts = face == RailFace.UpperFlange
                ? edge.Select((p, k) => Plane2.Distance(middle, p, edge[(k + 1) % edge.Length]))
                : blank.Witnesses.Where(w => w.Words == "slit").Select(w => Plane2.Distance(middle, w.Line[0], w.Line[1]));
            Assert.Equal(told, cuts.Min() < diameter / 2 + 4 - 0.03);
            if (!told) moved++;
        }
        Assert.True(moved > 30);
    }

    [Fact]
    public void Making_way_leaves_what_the_cuts_take_up()
    {
        static double Lost(MadeRail m) => m.Chosen[1].Cuts * m.Chosen[1].CutWidth;
        var made = Make(RailFace.UpperFlange, 205, 20, Round(10), WayKind.Notch);
        Assert.Single(made.Kit.Pieces[0].Openings);
        Assert.Equal(-made.Strains[1].Spans.Sum(s => s.Change), Lost(made), 9);
    }

    [Fact]
    public void Nothing_is_tacked_where_nothing_is_welded()
    {
        var folded = MadeRail.Of(new("straight", RailKind.C, 2, 3, [Made.At(0), Made.At(400)]), new Din6935(), 28).Value;
        Assert.DoesNotContain(folded.Kit.Steps, s => s.Contains("weld"));
        Assert.Contains(Make(RailFace.UpperFlange, 50, 20, Round(10), WayKind.Notch).Kit.Steps, s => s.Contains("only tacks"));
    }
}
