using CsCheck;
using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

/// <summary>Straight and tapered rails against faces and straight bends, developed and folded by their own routines.</summary>
public class ExactTests
{
    static readonly BendMethod Method = new NeutralAxis(0.4);

    static readonly Gen<Rail> Straight =
        from kind in Gen.Enum<RailKind>()
        from stations in Gen.Select(Gen.Double[100, 400], Gen.Double[60, 120], Gen.Double[25, 50], Gen.Double[25, 50]).Array[2, 8]
        from angles in Gen.Select(Gen.Double[1.0, 1.57], Gen.Double[1.0, 1.57])
        from slope in Gen.Double[-0.2, 0.2]
        select Of(kind, stations, angles, slope);

    static Rail Of(RailKind kind, (double Step, double Web, double Lower, double Upper)[] raw, (double L, double U) angles, double slope)
    {
        var (lip, x) = (kind == RailKind.TopHat ? 20 : 0, 0.0);
        var stations = new List<Station>();
        foreach (var (step, web, lower, upper) in raw)
        {
            // Edges that fall away only (the far edge bulges): runs of a flange part on the blank and do not lap.
            var height = 140 - x * x / 40000 + web / 100;
            var even = kind == RailKind.TopHat;
            stations.Add(new(x, Math.Max(30, height), even ? 30 : lower, kind == RailKind.L ? 0 : even ? 32 : upper) { LowerLip = lip, UpperLip = lip, Level = slope * x });
            x += step;
        }
        while (stations.Count > 2 && stations[^1].At > 1900) stations.RemoveAt(stations.Count - 1);
        return new("straight", kind, 2, 3, [.. stations]) { LowerAngle = angles.L, UpperAngle = angles.U };
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "Refold: the blank of the face tree folded up by whole rigid motions of the flat, against the rail's own definition")]
    public void A_straight_rail_folds_up_from_its_blank_to_its_definition()
    {
        var (trees, worst) = (0, 0.0);
        Straight.Sample(rail =>
        {
            var form = RailForm.Of(rail, Method).Value;
            if (RailTree.Of(form) is not { } tree) return;
            Interlocked.Increment(ref trees);
            var points = Refold.Points(Develop.Blank(tree, Method, Relief.None).Value);
            foreach (var edge in form.Folds)
                for (var i = 0; i < edge.Line.Steps.Length; i++)
                {
                    var (from, to) = (edge.Line.StartOf(i), edge.Line.StartOf(i) + edge.Line.Steps[i].Length);
                    var face = points[$"{edge.Name} flange {i + 1}"];
                    foreach (var along in new[] { from, to })
                    {
                        var (at, _) = form.Stand(edge, along, edge.Place(along, i), edge.Shape!.Allowance + edge.Shape.Flat(edge.FlangeAt(along)));
                        // The tree's root lies in the xy plane, its upper side up; the rail stands, that side towards the eye at −y.
                        var local = new Vec3(at.X, at.Z, -at.Y);
                        var error = face.Min(p => p.DistanceTo(local));
                        Assert.InRange(error, 0, 1e-9);
                        worst = Math.Max(worst, error);
                    }
                }
        }, iter: 300);
        Assert.True(trees > 200, $"{trees} trees, worst {worst}");
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "Develop: the outline of the face tree's blank, walked face by face")]
    public void A_straight_rails_blank_is_the_face_trees()
    {
        var trees = 0;
        Straight.Sample(rail =>
        {
            var made = MadeRail.Of(rail, Method, 28).Value;
            if (RailTree.Of(made.Form) is not { } tree) return;
            Interlocked.Increment(ref trees);
            var blank = Develop.Blank(tree, Method, Relief.None).Value;
            Assert.Equal(blank.Outline.Area, made.Kit.Pieces[0].Outline.Area, 6);
            foreach (var c in made.Kit.Pieces[0].Outline.Corners) Assert.InRange(blank.Outline.Corners.Min(o => o.At.DistanceTo(c.At)), 0, 1e-9);
        }, iter: 300);
        Assert.True(trees > 200, $"{trees} trees");
    }

    [Fact]
    [Truth(Grade.Property, "volume of a folded part by Pappus: faces by their thickness, bends as parts of a ring")]
    public void The_body_of_a_straight_rail_has_the_volume_of_its_faces()
    {
        var rail = new Rail("straight", RailKind.C, 2, 3, [Made.At(0, 90, 40, 35), Made.At(400, 90, 40, 35)]);
        var form = RailForm.Of(rail, Method).Value;
        var body = MadeRail.Of(rail, Method, 28).Value.Kit.Shape!;
        // Bends are drawn by four chords: (1 − cos) of 11° on a part of the section.
        Assert.InRange(body.Volume / Fold.Volume(RailTree.Of(form)!), 0.997, 1.0001);
    }

    [Fact]
    [Truth(Grade.Property, "each bend turned back unrolls an upright sheet: distances along a horizontal line of it are kept")]
    public void A_cranked_web_unrolls_by_its_arc()
    {
        var form = RailForm.Of(Made.Cranked(300, 0.5), Method).Value;
        Assert.Equal(2 * 150 + 300 * 0.5, form.Lower.Line.Length, 9);
        Assert.Equal(2 * 150 + 300 * 0.5, form.Upper.Line.Length, 9);
    }
}
