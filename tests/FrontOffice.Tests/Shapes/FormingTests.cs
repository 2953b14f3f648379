using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.FrontOffice.CompareSections;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.FrontOffice.RaiseBead;
using WitnessMark.FrontOffice.SetBend;
using WitnessMark.PlanningOffice;
using WitnessMark.Trade;

namespace WitnessMark.Tests.FrontOffice.Shapes;

public class FormingTests
{
    static SetBendRequest Request(double thickness = 1.2, double length = 300, string material = "DC01") =>
        new(new(20, Math.PI / 2, thickness, length), Materials.Find(material)!);

    [Theory]
    [Truth(Grade.Property, "every demo panel reads, makes a kit, and its files are written")]
    [InlineData("bead-floor.json")]
    [InlineData("bead-bulkhead.json")]
    public void A_demo_panel_goes_from_file_to_files(string name)
    {
        var result = RaiseBead.Run(RaiseBead.Read(Demo.Bytes($"shapes/{name}")).Value).Value;
        var files = KitFiles.Of(new(result.Made.Kit, "panel", new TitleFields(result.Made.Kit.Title, ""), result.Material)).ToList();
        Assert.Contains(files, f => f.FileName == "panel-blank.dxf");
        Assert.Equal(result.Made.Kit.Formers.Length + (result.Made.Kit.Shape is null ? 0 : 1), files.Count(f => f.FileName.EndsWith(".stl", StringComparison.Ordinal)));
        Assert.All(files, f => Assert.NotEmpty(f.Bytes));
    }

    [Fact]
    [Truth(Grade.Property, "a folder is held to the mild steel that asks as much of it: T·√(UTS/410)")]
    public void The_shops_folder_is_held_against_the_bend()
    {
        var shop = Shop.Usual with { Folder = new("folder", 200, 1, 92 * Math.PI / 180) };
        var words = SetBend.Run(Request() with { Shop = shop }).Value.Cautions.Select(c => c.Words).ToList();
        Assert.Contains(words, w => w.Contains("1.2 mm of mild steel; it takes 1.0 mm"));
        Assert.Contains(words, w => w.Contains("300 mm long; the folder takes 200 mm"));
        Assert.Contains(words, w => w.Contains("the folder goes to 92.0°"));
        Assert.Equal(1.2 * Math.Sqrt(310 / 410.0), SetBend.Run(Request(material: "Aluminium 6082")).Value.AsMildSteel, 1e-12);
    }

    [Theory]
    [Truth(Grade.Property, "what must be set past 180° is said once, and the folder's lesser reach not beside it; a trial bend does not silence it")]
    [InlineData(false)]
    [InlineData(true)]
    public void Past_flat_is_one_verdict(bool tried)
    {
        var result = SetBend.Run(Request() with { Wanted = new(5000, Math.PI / 2, 1, 100), Trial = tried ? new(400, 2, 0.2) : null }).Value;
        var said = Assert.Single(result.Cautions, c => c.Words.Contains("bent to"));
        Assert.Contains($"bent to {result.Angle * 180 / Math.PI:0.0}°, and at 180° the sheet lies flat on itself", said.Words);
    }

    [Fact]
    [Truth(Grade.Property, "a trial bend of the same radius and angle asks for the angle that gave it")]
    public void A_trial_bend_counts_before_the_table()
    {
        // A bar of 18.62 mm and 96.5° left 90° round 20 mm: the same is to be set again.
        var table = SetBend.Run(Request()).Value;
        var final = SpringBack.FinalRadius(18.5, 1.2, 300, 226000).Value;
        var trial = SetBend.Run(Request() with { Wanted = new(final, 1.5, 1.2, 300), Trial = new(18.5, SpringBack.SetAngle(1.5, 18.5, final, 1.2), 1.5) }).Value;
        Assert.Equal(18.5, trial.Radius, 1e-8);
        Assert.Equal(SpringBack.SetAngle(1.5, 18.5, final, 1.2), trial.Angle, 1e-10);
        Assert.Null(table.ByTrial);
        Assert.Equal(table.Overbend.Radius.Value, table.Radius);
    }

    [Fact]
    [Truth(Grade.CommonPractice, "a part formed by heat comes with its cautions and defers to maker and local rules")]
    public void Heat_comes_with_its_cautions()
    {
        Assert.DoesNotContain(SetBend.Run(Request()).Value.Cautions, c => c.Words.Contains("fumes"));
        Assert.Contains(SetBend.Run(Request() with { Hot = true }).Value.Cautions, c => c.Words.Contains("fumes"));
        Assert.Contains(SetBend.Run(Request(material: "Spring steel EN 45") with { Hot = true }).Value.Cautions, c => c.Words.Contains("Never heat a spring"));
    }

    [Fact]
    [Truth(Grade.Property, "a section held against itself is no weaker; thinner sheet or plugs too far apart are")]
    public void Original_and_copy()
    {
        var (pressed, pieces) = (CompareSections.Read(Demo.Bytes("shapes/section-rail-pressed.json")).Value, CompareSections.Read(Demo.Bytes("shapes/section-rail-two-piece.json")).Value);
        Assert.True(CompareSections.Run(pressed, pressed).Value.NoWeaker);
        Assert.True(CompareSections.Run(pressed, pieces).Value.NoWeaker);
        Assert.Null(CompareSections.Run(pressed).Value.NoWeaker);
        var far = pieces with { Profile = pieces.Profile with { Joins = [.. pieces.Profile.Joins.Select(j => j with { Pitch = 500 })] } };
        var result = CompareSections.Run(pressed, far).Value;
        Assert.False(result.NoWeaker);
        Assert.Contains(result.Cautions, c => c.Words.Contains("are too few"));
        var soft = pressed with { Material = "Aluminium 1050A-O" };
        Assert.False(CompareSections.Run(pressed, soft).Value.NoWeaker);
        Assert.Contains(CompareSections.Run(pressed, soft).Value.Cautions, c => c.Words.Contains("half its strength"));
        Assert.Contains(result.Cautions, c => c.Words.Contains("licensed engineer"));
    }

    [Theory]
    [Truth(Grade.Property, "bad input is one sentence that names the field")]
    [InlineData("""{ "strips": [], "solid": [] }""", "section: ")]
    [InlineData("""{ "strips": [{ "name": "a", "thickness": 1, "line": [[0, 0], [0, 0]] }] }""", "section, strips a, line: ")]
    [InlineData("""{ "strips": [{ "name": "a", "thickness": 1, "line": [[0, 0], [5, 0], [5, 5]], "inside_radius": 9 }] }""", "strip a, corner 2: ")]
    [InlineData("""{ "strips": [{ "name": "a", "thickness": 1, "line": [[0, 0], [9, 0], [1, 0]] }] }""", "section, strips a, line: ")]
    [InlineData("""{ "strips": [{ "name": "a", "thickness": 1, "line": [[0, 0], [9, 0]] }, { "name": "a", "thickness": 1, "line": [[0, 0], [9, 0]] }] }""", "section, strips: \"a\" is not accepted; give each strip a name of its own.")]
    [InlineData("""{ "solid": [[0, 0], [10, 0], [0, 10], [10, 10]] }""", "section, solid: ")]
    [InlineData("""{ "solid": [[0, 0], [10, 0], [10, 10]], "carries": {} }""", "section, carries: ")]
    public void Sections_that_cannot_be_are_refused(string json, string sentence)
    {
        var read = CompareSections.Read(System.Text.Encoding.UTF8.GetBytes(json));
        Assert.StartsWith(sentence, read.Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "a material that is not on the list is refused by name, with the list")]
    public void A_material_nobody_knows_is_refused()
    {
        var panel = RaiseBead.Read(Demo.Bytes("shapes/bead-floor.json")).Value with { Material = "unobtainium" };
        Assert.StartsWith("panel, material: \"unobtainium\" is not accepted; write one of DC01", RaiseBead.Run(panel).Refusal!.Sentence);
        var section = CompareSections.Read(Demo.Bytes("shapes/section-rail-pressed.json")).Value with { Material = "unobtainium" };
        Assert.Contains("yields before it breaks", CompareSections.Run(section with { Material = "Grey" }).Refusal!.Sentence);
        Assert.StartsWith("original, material: \"unobtainium\"", CompareSections.Run(section).Refusal!.Sentence);
    }
}
