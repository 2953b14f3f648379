using WitnessMark.DrawingOffice.Beads;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Sections;
using WitnessMark.Tests;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Tests.Forming;

/// <summary>The worked examples of the three guides come out as they are written.</summary>
[Truth(Grade.Property, "docs/guide: what a page states is what the program answers")]
public class GuideTests
{
    [Fact]
    public void Bead()
    {
        var (guide, json) = Guide("bead.md");
        var made = MadePanel.Of(PanelJson.Read(json).Value, Materials.Find("DC01")!).Value;
        Assert.Contains($"{made.Plan.BlankWidth:0.0} by {made.Plan.BlankLength:0.0} mm", guide);
        Assert.Contains($"draws in {made.Plan.Rib!.Extra:0.00} mm at each bead", guide);
        Assert.Contains($"stretch {100 * made.Plan.Rib.Stretch:0.0} %", guide);
        Assert.Contains($"{made.Stiffness!.Along / made.Stiffness.Plain:0.0} times as stiff", guide);
        Assert.Contains($"{made.Tool!.Middle.Depth:0.00} mm deep", guide);
    }

    [Fact]
    public void SpringBack()
    {
        var (guide, _) = Guide("spring-back.md");
        var over = Overbend.Of(new(20, Math.PI / 2, 1.2, 300), Materials.Find("DC01")!).Value;
        Assert.Contains($"former {over.Radius.Value:0.00} mm ({over.Radius.Low:0.00} to {over.Radius.High:0.00})", guide);
        Assert.Contains($"bend to {over.Angle.Value * 180 / Math.PI:0.0}° ({over.Angle.Low * 180 / Math.PI:0.0} to {over.Angle.High * 180 / Math.PI:0.0})", guide);
        var trial = TrialBend.Of(20, 97 * Math.PI / 180, Math.PI / 2, 1.2).Value.For(20, Math.PI / 2).Value;
        Assert.Contains($"{trial.Radius:0.00} mm and {trial.Angle * 180 / Math.PI:0.0}°", guide);
        Assert.Contains($"{BendForce.AirBend(300, 1.2, 410, 9.6).Value / 1000:0.0} kN", guide);
    }

    [Fact]
    public void Section()
    {
        var (guide, json) = Guide("section.md");
        var typed = ProfileJson.Read(json).Value;
        var p = SectionProperties.Of(typed.Profile).Value;
        var need = JoinNeeds.Of(typed.Profile, Materials.Find("DC01")!, typed.Loads).Value[0];
        Assert.Contains($"{p.Area:0.0} mm², second moments {p.Ix:0} and {p.Iy:0} mm⁴", guide);
        Assert.Contains($"torsion {p.Torsion:0} mm⁴", guide);
        Assert.Contains($"{need.Flow:0.0} N on each mm", guide);
        Assert.Contains($"every {need.Pitch:0} mm", guide);
    }

    static (string Guide, string Json) Guide(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "docs", "guide", name))) folder = folder.Parent;
        var guide = File.ReadAllText(Path.Combine(folder!.FullName, "docs", "guide", name));
        return (guide, guide.Split("```json") is [_, var rest, ..] ? rest.Split("```")[0] : "");
    }
}
