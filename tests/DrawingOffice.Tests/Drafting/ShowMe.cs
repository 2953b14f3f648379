using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Forms;
using WitnessMark.DrawingOffice.Drafting.FromPlan;
using WitnessMark.DrawingOffice.Drafting.Picture;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

public sealed class ShowMe
{
    [Fact]
    public void Show()
    {
        var known = new Knowledge { Std = s => 0.02, MadeTo = s => Math.Abs(s.Value - 120) < 0.1 ? "4 3/4 in" : null, Wanted = s => 0.25 };
        foreach (var (name, shape) in new[] { ("bracket", Parts.Bracket), ("eight", Parts.EightHoles), ("link", Parts.Link), ("disc", Parts.Disc), ("blank", Parts.Blank) })
        {
            var title = Parts.Title(name + " plate, front");
            if (name == "link") title = title with { Cautions = ["Steering part: have it made or checked by someone licensed to, and follow the local rules before it goes on the road."] };
            var drawing = DetailDrawing.Draw(shape, title, new() { Knowledge = known });
            Directory.CreateDirectory("/tmp/draft");
            File.WriteAllBytes($"/tmp/draft/{name}.pdf", Pdf.Write([.. drawing.Sheets]));
        }
        var sample = Surveys.Plate(3, 0.6);
        var plan = Adjust.Solve(sample);
        Save("plan", [PlanPicture.Draw(plan, sample)]);
        var slack = Surveys.Plate(4, loose: true);
        Save("slack", [PlanPicture.Draw(Adjust.Solve(slack), slack)]);
        var part = PlanPart.Of(plan, sample, new() { MadeTo = id => id == "H3" ? "1 in" : null, Wanted = id => 0.1, WantedBetween = _ => 0.25 });
        Save("survey", DetailDrawing.Draw(part.Part, Parts.Title("Guard plate") with { Cautions = part.Cautions }, new() { Knowledge = part.Knowledge }).Sheets);
        Save("template", [Template.Draw(Parts.Blank, "blank")]);
        Save("reading", ReadingSheet.Draw(new("S-12", "Battery bracket")
        {
            Features = [new("C1", "corner", X: "0", Y: "0"), new("C2", "corner", X: "120", Y: "0"), new("H1", "hole", X: "15", Y: "15"), new("E1", "edge", "C1", "C2")],
            Readings = [new("centre distance", "H1", "H2", Note: "still missing"), new("diameter", "H1")],
            Kinds = ["centre distance", "outside over holes", "inside between holes", "edge to hole", "centre to edge", "length along edge", "across edges", "diameter", "slot width", "slot length", "radius", "chord", "rise", "angle", "picked", "on", "parallel", "square", "tangent"],
        }));
        Save("card", JobCard.Draw(new("Remake the battery bracket", "Battery bracket, LH", "WM-0417")
        {
            Date = new(2026, 11, 25), Drawing = "WM-0417", Cost = "£14.20",
            Cautions = ["Sheet edges cut: wear gloves and deburr before folding.", "Welding: fumes, ultraviolet and fire. Take zinc off first, ventilate, watch the place for an hour after. Local codes and licensed practice come first."],
            Stock = [new("Mild steel sheet CR4, 16 SWG", "250 × 500 mm", "1", "£11.00"), new("Bolt 5/16 BSF × 3/4 with nut and spring washer", "", "4", "£3.20")],
            Steps = [new("Mark out the blank from the 1:1 template; check the 100 mm line both ways", "rule, scriber, centre punch", 0.2, 0.3, 0.5), new("Cut the blank", "snips, file", 0.3, 0.5, 1), new("Drill A, D 8.4 mm; C 1 in", "drill press, step drill, clamp", 0.3, 0.5, 0.8), new("Fold in the order 2, 1", "folder 600 mm", 0.2, 0.4, 1), new("Zinc plate", "", 0.5, 1, 1.5, true)],
        }));
    }

    static void Save(string name, IEnumerable<WitnessMark.PrintRoom.Sheet> sheets) => File.WriteAllBytes($"/tmp/draft/{name}.pdf", Pdf.Write([.. sheets]));
}
