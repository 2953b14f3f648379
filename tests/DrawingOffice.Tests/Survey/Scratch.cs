using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;
namespace WitnessMark.DrawingOffice.Tests.Survey;
public class Scratch
{
    [Fact]
    public void Look()
    {
        var (sample, _) = Plates.Load("plate-02-one-gross");
        var plan = Adjust.Solve(sample);
        Console.WriteLine(string.Join(",", Robust.Suspects(plan.Solver, plan.Fit, default)) + " " + plan.Doubts.Words + plan.Critical);
        (sample, _) = Plates.Load("plate-04-mirror");
        var blind = sample with { Features = [.. sample.Features.Select(f => f with { Sketch = null })] };
        var s = new Solver(blind);
        foreach (var x in Start.From(s, default)) { var m = s.Minimise(x, s.Weights, default); Console.WriteLine(m.SumOfSquares + " " + m.Words + m.Iterations); }
    }
}
