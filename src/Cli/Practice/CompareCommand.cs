using System.CommandLine;
using System.Text;
using WitnessMark.FrontOffice.PractiseMeasuring;
using WitnessMark.FrontOffice.PractiseMeasuring.Compared;

namespace WitnessMark.Cli.Practice;

/// <summary><c>wmark practice compare</c></summary>
static class CompareCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("The readings of a practice sheet (CSV), as --list of wmark practice sheet begins it.");
        var json = Common.Json();
        return Common.Command("compare", "Lays the true sizes of a practice sheet beside what you found. It needs the whole plate: until then they stay hidden.",
            "wmark practice compare practice-17.csv", [file, json], parsed =>
            {
                var c = PractiseMeasuring.Compare(PracticeFile.Read(Encoding.UTF8.GetString(Desk.Read(parsed.GetRequiredValue(file)))).Value);
                if (parsed.GetValue(json)) desk.WriteJson(Shape(c));
                else Write(desk.Out, c);
            });
    }

    static object Shape(PracticeComparison c) => new
    {
        Sheet = c.Number,
        Sizes = c.Sizes.Select(s => new { s.What, DrawnMm = s.Drawn, TrueMm = s.True, FoundMm = s.Found.Value, DifferenceMm = s.Difference, PlusMinusMm = s.PlusMinus, s.Inside }),
        c.Inside,
        c.InsideUnscaled,
        c.InsideWithOwn,
        c.Squares,
        c.Print,
        c.Scatter,
        c.Misread,
        c.Words,
    };

    static void Write(TextWriter to, PracticeComparison c)
    {
        to.WriteLine($"{"size",-10}{"true",10}{"found",10}{"difference",12}{"±",8}");
        foreach (var s in c.Sizes) to.WriteLine($"{s.What,-10}{s.True,10:0.00}{s.Found.Value,10:0.00}{s.Difference,12:+0.000;-0.000;0.000}{s.PlusMinus,8:0.000}{(s.Inside ? "" : "  outside")}");
        to.WriteLine();
        foreach (var words in c.Words) to.WriteLine(words);
    }
}
