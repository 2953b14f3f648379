using CsCheck;
using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Transitions;

public class TubeTests
{
    static AskedSaddle Saddle(double main, double branch, double wall, double angle, double offset, Touching touching = Touching.First, bool through = false) =>
        new("saddle", wall, 2 * branch, 300, new(main, wall), angle, offset, touching, through) { Sizes = Surface.Outside };

    [Fact]
    [Truth(Grade.Property, "a point of the crossing lies on both cylinders: its distances from the two axes are the two radii")]
    public void Crossing_points_lie_on_both_tubes()
    {
        Gen.ULong.Sample(seed =>
        {
            var chance = new Chance(seed);
            var (main, angle) = (chance.Uniform(20, 80), chance.Uniform(0.2, Math.PI / 2));
            var branch = chance.Uniform(5, main);
            var offset = chance.Uniform(branch - main, main - branch);
            var tube = new AgainstTube(main, angle, offset);
            var along = new Vec3(Math.Cos(angle), 0, Math.Sin(angle));
            for (var t = 0.0; t < Math.Tau; t += 0.1)
            {
                var (s, c) = Math.SinCos(t);
                var p = new Vec3(0, offset, 0) + along * tube.Height(branch, t) + new Vec3(Math.Sin(angle), 0, -Math.Cos(angle)) * (branch * c) + new Vec3(0, branch * s, 0);
                Assert.Equal(main, Math.Sqrt(p.Y * p.Y + p.Z * p.Z), 9);
                Assert.Equal(branch, (p - new Vec3(0, offset, 0)).Cross(along).Length, 9);
                var (x, round) = tube.OnMain(branch, t);
                Assert.Equal(p.X, x, 9);
                Assert.Equal(p.Y, main * Math.Sin(round / main), 9);
            }
        }, iter: 200);
    }

    [Fact]
    [Truth(Grade.Property, "an equal tee is cut on two planes: its height is R |cos θ|")]
    public void An_equal_tee_is_cut_on_two_planes()
    {
        var tube = new AgainstTube(40, Math.PI / 2, 0);
        for (var t = 0.0; t < Math.Tau; t += 0.05) Assert.Equal(40 * Math.Abs(Math.Cos(t)), tube.Height(40, t), 9);
    }

    [Fact]
    [Truth(Grade.Property, "cut at the first touch no point of the wall lies inside the main, and somewhere it touches")]
    public void Cut_at_the_first_touch_the_branch_goes_on_as_sawn()
    {
        Gen.ULong.Sample(seed =>
        {
            var chance = new Chance(seed);
            var (main, angle, outer) = (50.0, chance.Uniform(0.5, Math.PI / 2), chance.Uniform(15, 35));
            var tube = new AgainstTube(main, angle, chance.Uniform(0, 15));
            var inner = outer - chance.Uniform(1, 8);
            for (var t = 0.0; t < Math.Tau; t += 0.2)
            {
                var cut = tube.Height(Touching.First, inner, outer, t);
                var wall = Enumerable.Range(0, 201).Max(k => tube.Height(inner + (outer - inner) * k / 200, t));
                Assert.InRange(cut - wall, -1e-9, 1e-3);
            }
        }, iter: 200);
    }

    [Fact]
    [Truth(Grade.Property, "a mitre is a plane: wrapped round the tube again every point of the template lies in it")]
    public void A_mitre_template_wraps_into_a_plane()
    {
        var asked = new AskedMitre("mitre", 1.5, 25, 120, 1.1) { Sizes = Surface.Outside, Error = 0.001 };
        var made = Made.Of(asked).Value;
        var layer = 12.5 + Wrapping.Usual.Paper / 2;
        var curve = made.Kit.Pieces[0].Outline.Corners.Select(c => c.At).Where(p => p.Y < 0 && p.X <= Math.Tau * layer + 1e-9).ToList();
        Assert.True(curve.Count > 24);
        var heel = curve.Min(p => p.Y);
        foreach (var p in curve)
        {
            // The seam stands at the heel, so the angle from the throat is half a turn on.
            var x = 12.5 * Math.Cos(p.X / layer + Math.PI);
            Assert.Equal((x + 12.5) * Math.Tan(0.55), p.Y - heel, 9);
        }
    }

    [Fact]
    [Truth(Grade.Property, "a paper of thickness p closes round a tube of radius r at 2 π (r + p/2)")]
    public void A_template_allows_for_its_paper()
    {
        var asked = Saddle(50, 30, 2, 1.2, 5) with { Wrapping = new(0.4, 20, 16) };
        var template = Made.Of(asked).Value.Kit.Pieces[0];
        var seam = template.Witnesses.Single(w => w.Words == "lay this end here").Line;
        Assert.Equal(Math.Tau * 30.2, seam[0].X, 9);
        Assert.Equal(Math.Tau * 30.2 + 20, template.Outline.Corners.Max(c => c.At.X), 9);
        Assert.Equal(16, template.Witnesses.Count(w => int.TryParse(w.Words, out _)));
        // Where the seam is laid the curve comes back to where it began.
        Assert.Equal(template.Outline.Corners[0].At.Y, seam[0].Y, 9);
    }

    [Fact]
    [Truth(Grade.Property, "the throat line of a template lies at the angle that the seam was put away from it")]
    public void The_seam_goes_where_it_is_put()
    {
        foreach (var seam in new[] { 0.5, 2.0, 3.0, 6.0 })
        {
            var made = Made.Of(Saddle(50, 30, 2, 1.0, 0) with { Seam = new(SeamPlace.Angle, seam) }).Value;
            var throat = made.Kit.Pieces[0].Witnesses.Single(w => w.Words.StartsWith("throat", StringComparison.Ordinal)).Line;
            Assert.Equal(Math.Tau - seam, throat[0].X / 30.05, 9);
            // Acute side: the branch is shortest there for a slender branch.
            Assert.InRange(throat[0].Y - made.Kit.Pieces[0].Outline.Corners.Where(c => c.At.Y < 0).Max(c => c.At.Y), 0, 0.1);
        }
    }

    [Fact]
    [Truth(Grade.Property, "through a plate the hole is the ellipse r by r / sin β, and the cut is a plane")]
    public void A_tube_through_a_plate()
    {
        var asked = new AskedSaddle("post", 2, 44, 200, new(null, 3), 50 * Math.PI / 180, 0, Touching.First, true) { Sizes = Surface.Outside, Error = 0.0005 };
        var made = Made.Of(asked).Value;
        Assert.InRange(made.Kit.Pieces[1].Openings[0].Edge.Area / (Math.PI * 22 * 22 / Math.Sin(asked.Angle)), 1 - 5e-5, 1);
        Assert.Equal((22 * Math.Cos(asked.Angle) - 3) / Math.Sin(asked.Angle), SaddleKit.Met(asked).Height(22, 0), 9);
    }

    [Fact]
    [Truth(Grade.Published, "Pattern Development (opentextbc.ca), Round Elbow: 6 in pipe, 6 in throat, 4 pieces, 90°: 6 half segments, mitre 15°, 2 7/16 in on its middle, blank 14 5/8 in")]
    public void The_elbow_of_the_textbook()
    {
        const double inch = 25.4;
        var cut = new Segments(4, Math.PI / 2, 9 * inch);
        Assert.Equal(15, cut.Mitre * 180 / Math.PI, 9);
        // The book measures its drawing to the nearest sixteenth.
        Assert.InRange(cut.Half(3 * inch, Math.PI / 2) / inch, 2 + 7.0 / 16 - 1.0 / 32, 2 + 7.0 / 16 + 1.0 / 32);
        Assert.InRange(6 * cut.Half(3 * inch, Math.PI / 2) / inch, 14 + 5.0 / 8 - 6.0 / 32, 14 + 5.0 / 8 + 6.0 / 32);
    }

    [Fact]
    [Truth(Grade.Property, "Cavalieri: a mitred tube holds its section times the length of its middle line, and so do its blanks hold girth times that length")]
    public void A_segmented_bend_has_the_metal_of_its_middle_line()
    {
        foreach (var segments in new[] { 2, 3, 5, 9 })
        {
            var asked = new AskedElbow("bend", 2, 80, 130, Math.PI / 2, segments, 25) { Sizes = Surface.Mean, Error = 0.001 };
            var made = Made.Of(asked).Value;
            var middle = 2 * 25 + 2 * (segments - 1) * 130 * Math.Tan(Math.PI / 4 / (segments - 1));
            // A wall of 48 flats has this share of the round section.
            var flats = 24 / Math.PI * Math.Sin(Math.PI / 24);
            Assert.Equal(Math.PI * (41 * 41 - 39 * 39) * flats * middle, made.Kit.Shape!.Volume, 4);
            Assert.InRange(made.Kit.Pieces.Sum(p => p.Area * p.Quantity) / (Math.Tau * 40 * middle), 1 - 1e-5, 1 + 1e-5);
        }
    }

    [Fact]
    [Truth(Grade.Published, "Navy training manual 14119 (enginemechanics.tpub.com): a five-piece 90° elbow has 2 × 5 − 2 = 8 equal angles")]
    public void A_quarter_bend_is_given_five_pieces()
    {
        Assert.Equal(5, Segments.Chosen(Math.PI / 2));
        Assert.Equal(90.0 / 8, new Segments(5, Math.PI / 2, 100).Mitre * 180 / Math.PI, 9);
    }

    [Fact]
    [Truth(Grade.Property, "bodies are closed: every edge of a facet is walked once each way")]
    public void Every_picture_is_closed()
    {
        Asked[] all =
        [
            Saddle(50, 30, 2, 1.0, 5), Saddle(50, 25, 2, 1.2, 0, Touching.Inside, true), new AskedMitre("m", 1.5, 25, 120, 1.2) { Sizes = Surface.Outside },
            new AskedElbow("e", 1, 76, 110, 1.5, null, 0), new AskedCone("c", 1, 120, 0, 90, Vec2.Zero), new AskedCone("c", 1, 120, 60, 90, new(20, 5)) { Seam = new(SeamPlace.Flat, 0, 0, 2) },
            Shapes.Asked(Shapes.At(new BoxForm(120, 80, 0), 0, 0, 0), Shapes.At(new RoundForm(76), 20, 0, 110, 0, 12)),
        ];
        foreach (var asked in all)
        {
            var sides = new Dictionary<(Vec3, Vec3), int>();
            foreach (var loop in Made.Of(asked).Value.Kit.Shape!.Facets.SelectMany(f => f.Loops))
                for (var i = 0; i < loop.Length; i++)
                {
                    var (a, b) = (Snap(loop[i]), Snap(loop[(i + 1) % loop.Length]));
                    if (a == b) continue;
                    sides[(a, b)] = sides.GetValueOrDefault((a, b)) + 1;
                    sides[(b, a)] = sides.GetValueOrDefault((b, a)) - 1;
                }
            Assert.DoesNotContain(sides, s => s.Value != 0);
        }
        static Vec3 Snap(Vec3 p) => new(Math.Round(p.X, 5) + 0.0, Math.Round(p.Y, 5) + 0.0, Math.Round(p.Z, 5) + 0.0);
    }

    [Fact]
    [Truth(Grade.Property, "rolled from sheet: the blank has the girth of its layer, the height of the tube and a seam for each tube")]
    public void A_tube_of_sheet_gets_a_blank_and_a_seam()
    {
        var saddle = Made.Of(Saddle(50, 30, 2, 1.2, 0) with { OfSheet = true, Seam = new(SeamPlace.Angle, 0, 8) }).Value;
        Assert.Equal(["hole template"], saddle.Kit.Pieces.Where(p => p.Paper).Select(p => p.Name));
        var blank = saddle.Kit.Pieces[0].Outline.Corners.Select(c => c.At).ToList();
        Assert.Equal(Math.Tau * 29 + 8, blank.Max(p => p.X) - blank.Min(p => p.X), 9);
        Assert.Equal(300, blank.Max(p => p.Y), 9);
        Assert.Equal(2, saddle.Kit.Seams.Length);
        var mitre = Made.Of(new AskedMitre("m", 1, 60, 150, 1) { Sizes = Surface.Outside, OfSheet = true }).Value;
        Assert.DoesNotContain(mitre.Kit.Pieces, p => p.Paper);
        Assert.Equal(2, mitre.Kit.Pieces[0].Count);
        Assert.Equal(3, mitre.Kit.Seams.Length);
        Assert.InRange(mitre.Kit.Pieces[0].Area / (Math.Tau * 29.5 * 150), 1 - 1e-4, 1 + 1e-4);
    }
}
