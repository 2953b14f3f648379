using WitnessMark.DrawingOffice.Beads;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Sections;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.Tests;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Tests.Beads;

public class PanelTests
{
    static readonly Material Mild = Materials.Find("DC01")!;

    internal static Panel Floor => new("floor", "DC01", 0.9, 400, 350)
    {
        Beads = new(new(BeadKind.Round, 4, 14, 300, 2, RunOut: 25), 5, 60, 200),
        Holes = [new("A", new(110, 175), 20, 5, 2)],
        Edges = [new(PanelSide.Left, 4), new(PanelSide.Top, null, 8)],
    };

    [Fact]
    [Truth(Grade.Property, "the blank is the panel, what its beads take, and what its edges take")]
    public void Blank_of_a_row()
    {
        var plan = PanelPlan.Of(Floor).Value;
        Assert.Equal(400 + 5 * plan.Rib!.Extra + EdgeAllowances.Wired(4, 0.9).Value.Exact, plan.BlankWidth, 1e-9);
        Assert.Equal(350 + EdgeAllowances.Hemmed(8, 0, 0.9).Value.Exact, plan.BlankLength, 1e-9);
        // Each bead pushes what lies right of it along.
        Assert.Equal(plan.More(PanelSide.Left) + 400 + plan.DrawIn, plan.OnBlank(new(400, 0)).X, 1e-9);
        Assert.Equal(60 + plan.Rib.Extra, plan.OnBlank(new(Floor.Beads!.Place(3), 0)).X - plan.OnBlank(new(Floor.Beads.Place(2), 0)).X, 1e-9);
        Assert.Equal([2, 1, 3, 0, 4], Floor.Beads.CentreOut);
    }

    [Fact]
    [Truth(Grade.Property, "closed surfaces; a prism's volume is its section's area times its length; the sheet keeps its volume")]
    public void Former_and_panel_are_closed_and_hold_the_right_metal()
    {
        var made = MadePanel.Of(Floor, Mild).Value;
        Assert.True(Closed(made.Kit.Shape!));
        // What a shallow bead takes grows as its depth squared, and the square of a half-cosine fade has the mean 3/8.
        Assert.InRange(made.Kit.Shape!.Volume / (0.9 * (400 * 350 + made.Plan.DrawIn * (250 + 50 * 3 / 8.0))), 0.9995, 1.0005);
        foreach (var former in made.Kit.Formers) Assert.True(Closed(former.Shape), former.Name);
        var bead = Floor.Beads!.Bead with { RunOut = 0 };
        var straight = BeadBodies.Former(bead, made.Tool!.Middle, 0.9);
        // Under the lower face: area between the set-off line and the base, along the length.
        var face = made.Tool.Middle.Line().Off(-0.45);
        var above = AreaMoments.Of(new([.. face.Corners])).Area;
        var under = above + (face.End.X - face.Start.X + 2 * 20) * (20 - 0.45);
        Assert.InRange(straight.Volume / (under * 300), 0.998, 1.002);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "Pappus: a turned body holds its section's area times the way of its centroid")]
    public void Turned_bodies_hold_what_pappus_says()
    {
        Vec2[] section = [new(5, 0), new(9, 0), new(9, 6), new(7, 8), new(5, 6)];
        var area = AreaMoments.Of(Maths.Geometry.Loop.Of(section));
        var body = Loft.Turned([.. section], 720);
        Assert.True(Closed(body));
        // Chords of half a degree: sin 0.5°/0.5° of the circle's area.
        Assert.InRange(body.Volume / (2 * Math.PI * area.X), 1 - 2e-5, 1);
    }

    [Fact]
    [Truth(Grade.Property, "bent to the tool's radii the arcs spring back to those wanted")]
    public void The_tools_radii_spring_to_the_wanted()
    {
        var made = MadePanel.Of(Floor, Mild).Value;
        var (tool, rib) = (made.Tool!, made.Plan.Rib!);
        var stiff = SpringBack.Stiffness(206000, 0.3, 300, 0.9);
        Assert.Equal(rib.Crown - 0.45, SpringBack.FinalRadius(tool.Crown.Value, 0.9, 230, stiff).Value, 1e-9);
        Assert.Equal(rib.Edge - 0.45, SpringBack.FinalRadius(tool.Edge.Value, 0.9, 230, stiff).Value, 1e-9);
        Assert.True(tool.Deeper > 0 && tool.Middle.Turn > rib.Turn);
    }

    [Fact]
    [Truth(Grade.Property, "a deep narrow bead held fast stretches more than the metal bears, and is said to")]
    public void Stretch_is_cautioned_with_its_numbers()
    {
        Assert.DoesNotContain(MadePanel.Of(Floor with { Beads = Floor.Beads! with { Bead = new(BeadKind.Round, 3, 16, 300, 2, RunOut: 25) } }, Mild).Value.Kit.Cautions, c => c.Words.Contains("Held fast"));
        var deep = Floor with { Beads = Floor.Beads! with { Bead = new(BeadKind.Round, 7, 14, 300, 1, RunOut: 10) }, Holes = [] };
        var caution = Assert.Single(MadePanel.Of(deep, Mild).Value.Kit.Cautions, c => c.Words.Contains("Held fast"));
        Assert.Contains("DC01", caution.Words);
        Assert.Contains("bears about 20 % before it necks", caution.Words);
    }

    [Fact]
    [Truth(Grade.Property, "bad input is one sentence that names the field")]
    public void What_does_not_fit_is_refused()
    {
        static string Said(Panel p) => PanelPlan.Of(p).Refusal!.Sentence;
        var row = Floor.Beads!;
        Assert.Equal("beads, pitch: \"12 mm\" is not accepted; a bead takes 14 mm of the panel; give at least that.", Said(Floor with { Beads = row with { Pitch = 12 } }));
        Assert.Equal("beads: \"from -7 to 407 mm\" is not accepted; they must lie within the panel's 400 mm.", Said(Floor with { Beads = row with { Pitch = 100 } }));
        Assert.StartsWith("bead, run-out: \"0\"", Said(Floor with { Beads = row with { Bead = row.Bead with { RunOut = 0 } } }));
        Assert.StartsWith("flanged hole A, at: \"142, 175\" is not accepted; its bend runs into bead 2", Said(Floor with { Holes = [Floor.Holes[0] with { At = new(142, 175) }] }));
        Assert.StartsWith("flanged hole A, at: \"2, 175\"", Said(Floor with { Holes = [Floor.Holes[0] with { At = new(2, 175) }] }));
        Assert.StartsWith("flanged hole B, at: ", Said(Floor with { Holes = [Floor.Holes[0], Floor.Holes[0] with { Name = "B", At = new(110, 190) }] }));
        Assert.Equal("edges: \"left\" is not accepted; give each side once.", Said(Floor with { Edges = [new(PanelSide.Left, 4), new(PanelSide.Left, 4)] }));
        Assert.Equal("panel: nothing is given; give beads, flanged holes or edges.", Said(new("", "DC01", 1, 10, 10)));
    }

    [Fact]
    [Truth(Grade.Property, "a hem lies over the panel by its width and a roll by its wire and the sheet on both sides of it: no bead, flange or other edge stands there")]
    public void A_hem_or_roll_over_a_bead_a_hole_or_the_panel_is_refused()
    {
        static string? Said(Panel p, params Edging[] edges) => PanelPlan.Of(p with { Edges = [.. edges] }).Refusal?.Sentence;
        // The first bead begins 80 − 7 mm from the left edge, and the beads end 25 mm from the top.
        var bare = Floor with { Holes = [] };
        Assert.Null(Said(bare, new(PanelSide.Left, null, 73), new(PanelSide.Right, 71.2), new(PanelSide.Top, null, 25)));
        Assert.Equal("left hem: \"150 mm\" is not accepted; it takes 150 mm of the panel and bead 1 begins 73 mm from that edge; make it narrower or the bead clear of it.", Said(bare, new Edging(PanelSide.Left, null, 150)));
        Assert.StartsWith("right wired edge: \"72 mm\" is not accepted; it takes 73.8 mm of the panel and bead 5 begins 73 mm", Said(bare, new Edging(PanelSide.Right, 72)));
        Assert.StartsWith("bottom hem: \"40 mm\" is not accepted; it takes 40 mm of the panel and bead 1 begins 25 mm", Said(bare, new Edging(PanelSide.Bottom, null, 40)));
        // Its bend reaches 10 + 0.9 + 2 mm from its middle.
        var holed = Floor with { Beads = null, Holes = [Floor.Holes[0] with { At = new(40, 100) }] };
        Assert.Null(Said(holed, new Edging(PanelSide.Left, null, 27)));
        Assert.Equal("left hem: \"60 mm\" is not accepted; it takes 60 mm of the panel and the bend of flanged hole A begins 27.1 mm from that edge; make it narrower or move the hole.", Said(holed, new Edging(PanelSide.Left, null, 60)));
        Assert.Equal("left hem: \"5000 mm\" is not accepted; it takes 5000 mm of a panel 400 mm wide; make it narrower.", Said(bare, new Edging(PanelSide.Left, null, 5000)));
        Assert.Equal("bottom hem: \"200 mm\" is not accepted; it takes 200 mm and the top hem 160 mm of a panel 350 mm long; make it narrower.",
            Said(bare with { Beads = null }, new(PanelSide.Bottom, null, 200), new(PanelSide.Left, null, 10), new(PanelSide.Top, null, 160)));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "a joggle is a step across a panel and stands alone: no row, no beads to go between")]
    public void A_joggle_is_spoken_of_as_one()
    {
        var kit = MadePanel.Of(new Panel("b", "DC01", 0.9, 400, 350) { Beads = new(new(BeadKind.Joggle, 6, 16, 300, 2, 2, RunOut: 25), 1, 0, 200) }, Mild).Value.Kit;
        var pieces = kit.Pieces.SelectMany(p => p.Notes.Concat(p.Witnesses.Select(w => w.Words)));
        var words = string.Join("\n", [.. kit.Steps, .. kit.Cautions.Select(c => c.Words), .. pieces, .. kit.Formers.SelectMany(f => new[] { f.Name, f.Words }),
            .. kit.Listings.SelectMany(l => l.Rows.Select(r => r[0]).Prepend(l.Title))]);
        Assert.DoesNotContain("bead", words, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("whole row", words);
        Assert.Contains("Scribe the middle of the joggle on the blank", words);
        Assert.Contains("Go over the whole joggle in 3 passes of about 2.0 mm.", words);
        Assert.Contains("A joggle stiffens a panel one way only", words);
    }

    [Theory]
    [Truth(Grade.Property, "bad input is one sentence that names the field")]
    [InlineData("""{ "thickness": 1, "width": 100, "length": 100, "beads": { "kind": "square", "depth": 3, "width": 12 } }""", "panel, beads, kind: ")]
    [InlineData("""{ "thickness": 0, "width": 100, "length": 100 }""", "panel, thickness: \"0\" is not accepted; it must be more than 0.")]
    [InlineData("""{ "thickness": 1, "width": 100, "length": 100, "bead": {} }""", "panel: \"bead\" is not accepted; known here: ")]
    [InlineData("""{ "thickness": 1, "width": 100, "length": 100, "edges": [{ "side": "left" }] }""", "panel, edges 1: ")]
    [InlineData("""{ "thickness": 1, "width": 100, "length": 100, "beads": { "kind": "round", "depth": 3, "width": 12, "top": 3 } }""", "panel, beads, top: ")]
    public void What_is_mistyped_is_refused(string json, string sentence) =>
        Assert.StartsWith(sentence, PanelJson.Read(json).Refusal!.Sentence);

    /// <summary>Each edge of the surface is walked once each way.</summary>
    internal static bool Closed(Body body)
    {
        var edges = new Dictionary<(Vec3, Vec3), int>();
        static Vec3 Key(Vec3 p) => new(Math.Round(p.X, 5) + 0.0, Math.Round(p.Y, 5) + 0.0, Math.Round(p.Z, 5) + 0.0);
        foreach (var loop in body.Facets.SelectMany(f => f.Loops))
            for (var i = 0; i < loop.Length; i++)
            {
                var (a, b) = (Key(loop[i]), Key(loop[(i + 1) % loop.Length]));
                edges[(a, b)] = edges.GetValueOrDefault((a, b)) + 1;
            }
        return edges.All(e => edges.GetValueOrDefault((e.Key.Item2, e.Key.Item1)) == e.Value);
    }
}
