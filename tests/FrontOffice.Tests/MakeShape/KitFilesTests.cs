using System.Text;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Pieces.Sheets;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PlanningOffice;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.PrintRoom.Solids;
using WitnessMark.Trade;

namespace WitnessMark.Tests.FrontOffice.MakeShape;

public class KitFilesTests
{
    static readonly DateTimeOffset s_day = new(2026, 11, 26, 9, 0, 0, TimeSpan.Zero);

    static Body Block(double a, double b, double c)
    {
        Vec3 P(int x, int y, int z) => new(x * a, y * b, z * c);
        return new([
            Facet.Of(P(0, 0, 1), P(1, 0, 1), P(1, 1, 1), P(0, 1, 1)), Facet.Of(P(0, 1, 0), P(1, 1, 0), P(1, 0, 0), P(0, 0, 0)),
            Facet.Of(P(0, 0, 0), P(1, 0, 0), P(1, 0, 1), P(0, 0, 1)), Facet.Of(P(1, 0, 0), P(1, 1, 0), P(1, 1, 1), P(1, 0, 1)),
            Facet.Of(P(1, 1, 0), P(0, 1, 0), P(0, 1, 1), P(1, 1, 1)), Facet.Of(P(0, 1, 0), P(0, 0, 0), P(0, 0, 1), P(0, 1, 1)),
        ], []);
    }

    /// <summary>The demonstration bracket with a gusset welded in, two of each hand of the gusset, and an angle block.</summary>
    static KitRequest Request()
    {
        var tree = BracketFile.Read(Demo.Bytes("samples/lamp-bracket.json")).Value;
        var blank = Develop.Blank(tree, new Din6935()).Value;
        var gusset = new Piece("gusset", blank.Thickness, Loop.Of(new(0, 0), new(40, 0), new(0, 30)))
        {
            Quantity = 2,
            Handed = true,
            Openings = [new RoundHole("P1", new(10, 8), 5)],
            Witnesses = [new("edge of bracket", [new(0, 4), new(34, 4)])],
        };
        var kit = new Kit(tree.Title, [Piece.Of(blank), gusset])
        {
            Shape = FoldedBody.Of(tree),
            Formers = [new("Angle block", "hardwood", Block(60, 40, 30), "Clamp the gusset against it while tacking.")],
            Seams = [new("W1", "bracket and gusset", SeamKind.Fillet, 30, 2, 0, 4, "Tack both ends first."), new("W2", "bracket and gusset", SeamKind.Plug, 40, 5, 0, 3, "Through the holes in the gusset.")],
            Steps = ["Fold the bracket.", "Tack the gussets on the angle block, then weld."],
            Listings = [new("Angles", ["joint", "setting angle"], [["bracket to gusset", "90.0° ± 0.5°"]])],
            Cautions = [new(CautionKind.Strength, "This carries a lamp only.", [])],
        };
        return new(kit, "bracket", new(kit.Title, "Q-7"), Materials.Find("DC01")!) { Created = s_day };
    }

    [Fact]
    [Truth(Grade.Property, "each output of the issue's item 7 is a file, and no two have one name")]
    public void Every_output_is_there()
    {
        var files = KitFiles.Of(Request()).ToList();
        var names = files.Select(f => f.FileName).ToList();
        Assert.Distinct(names);
        foreach (var wanted in new[] { "bracket-whole.pdf", "bracket-lists.csv", "bracket-gusset-drawing.pdf", "bracket-gusset.dxf", "bracket-gusset-template.pdf", "bracket-shape.stl", "bracket-angle-block.stl", "bracket-sheet-1.dxf", "bracket-sheet-1.svg", "bracket-card.pdf" })
            Assert.Contains(wanted, names);
        Assert.All(files, f => Assert.True(f.Bytes.Length > 100, f.FileName));
        if (Environment.GetEnvironmentVariable("WM_LOOK") is { } folder)
            foreach (var f in files) File.WriteAllBytes(Path.Combine(folder, f.FileName), f.Bytes);
    }

    [Fact]
    [Truth(Grade.Property, "the folded bracket's mesh is closed and holds its volume")]
    public void The_shape_is_a_closed_mesh()
    {
        var body = Request().Kit.Shape!;
        var mesh = body.ToMesh();
        Assert.Equal(0, mesh.OpenSides());
        Assert.Equal(1, mesh.Volume() / body.Volume, 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "lengths, counts and pieces on the card are those of the kit, each times its count")]
    public void The_card_counts_what_the_kit_holds()
    {
        var request = Request() with { Quantity = 3 };
        var nest = KitNest.Of(request);
        var card = KitCard.Of(request, nest);
        Assert.Equal(3 * (1 + 4), nest.Sheets.Sum(s => s.Pieces.Length));
        Assert.Contains(card.Steps, s => s.Title.Contains("Weld 360 mm of seam and 9 plug welds"));
        Assert.Contains(card.Steps, s => s.Title.StartsWith("Make first: Angle block"));
        var holes = request.Kit.Pieces.Sum(p => p.Count * p.Openings.OfType<RoundHole>().Count()) * 3;
        Assert.Equal(holes, card.Steps.Where(s => s.Title.StartsWith("Drill")).Sum(s => s.Title["Drill ".Length..].Split(", ").Sum(w => int.Parse(w.Split(' ')[0]))));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "welding brings UV, fume, zinc, tank and fire cautions; without a weld none of them is printed")]
    public void Welding_brings_its_cautions_and_nothing_else_does()
    {
        string[] Told(Kit kit) => [.. KitCard.Of(Request() with { Kit = kit }, KitNest.Of(Request())).Steps.SelectMany(s => s.Cautions)];
        var kit = Request().Kit;
        foreach (var word in new[] { "UV", "fumes", "fire watch", "Zinc", "fuel" })
        {
            Assert.Contains(Told(kit), c => c.Contains(word));
        }
        Assert.Contains("weld-through primer", KitCard.Of(Request(), KitNest.Of(Request())).Steps.First(s => s.Title.StartsWith("Take paint")).Title);
        Assert.DoesNotContain(Told(kit with { Seams = [] }), c => c.Contains("UV") || c.Contains("Zinc"));
    }

    [Fact]
    [Truth(Grade.Property, "every piece, bend and weld of the kit has a row in the list file")]
    public void The_list_holds_bends_and_welds()
    {
        var request = Request();
        var text = Encoding.UTF8.GetString(KitFiles.List(request).Bytes);
        foreach (var crease in request.Kit.Pieces.SelectMany(p => p.Creases)) Assert.Contains($"\"{crease.Id}\"", text);
        foreach (var seam in request.Kit.Seams) Assert.Contains($"\"{seam.Id}\"", text);
        Assert.Equal(KitTables.All(request.Kit).Sum(t => t.Rows.Length + 2), text.Split("\r\n").Count(l => l.Length > 0));
    }

    [Fact]
    [Truth(Grade.Property, "a shop without a welding set sends the welding out, and says so")]
    public void What_the_shop_cannot_weld_is_sent_out()
    {
        var request = Request() with { Shop = Shop.Usual with { Welders = [] } };
        Assert.Contains(KitCard.Of(request, KitNest.Of(request)).SentOut, s => s.Title.StartsWith("Tack and weld"));
    }
}
