using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

public sealed class ShowMe
{
    [Fact]
    public void Show()
    {
        var known = new Knowledge { Std = s => 0.02, MadeTo = s => Math.Abs(s.Value - 120) < 0.1 ? "4 3/4 in" : null, Wanted = s => 0.25 };
        foreach (var (name, part) in new[] { ("bracket", Parts.Bracket), ("eight", Parts.EightHoles), ("link", Parts.Link), ("disc", Parts.Disc), ("blank", Parts.Blank) })
        {
            var title = Parts.Title(name + " plate, front");
            if (name == "link") title = title with { Cautions = ["Steering part: have it made or checked by someone licensed to, and follow the local rules before it goes on the road."] };
            var drawing = DetailDrawing.Draw(part, title, new() { Knowledge = known });
            Directory.CreateDirectory("/tmp/draft");
            File.WriteAllBytes($"/tmp/draft/{name}.pdf", Pdf.Write([.. drawing.Sheets]));
        }
    }
}
