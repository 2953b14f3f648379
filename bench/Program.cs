using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.DrawingOffice.Tests.Survey;
using WitnessMark.Maths;
foreach (var (n, ties) in new[] { (30, 4), (100, 4), (200, 4), (1000, 4) })
{
    var s = Simulated.Plate(n, ties, new Chance(1));
    Plan p = null!;
    var reps = n > 500 ? 3 : 20;
    for (var i = 0; i < reps + 3; i++) {
    var t = Cpu();
    p = Adjust.Solve(s, searchMirrors: false);
    var a = (Cpu()-t);
    t = Cpu();
    if (n <= 100) Next.Advise(p, 0.01);
    var b = (Cpu()-t);
    t = Cpu();
    if (n<=200) Adjust.Solve(s);
    var c = (Cpu()-t);
    if (i > reps) {
    t = Cpu(); var solver = new Solver(s); var t1 = (Cpu()-t);
    t = Cpu(); var start = Start.From(solver, default); var t2 = (Cpu()-t);
    t = Cpu(); var y = Repair.Improve(solver, start[0], solver.Weights, default); var t3 = (Cpu()-t);
    t = Cpu(); var fit = solver.Settle(y, solver.Weights); var t4 = (Cpu()-t);
    t = Cpu(); var tests = Testing.Of(solver, fit); var t5 = (Cpu()-t);
    t = Cpu(); var d = Snooping.Find(solver, fit, tests, default); var t6 = (Cpu()-t);
    t = Cpu(); PlanMaker.Make(solver, fit, tests, d, false, default); var t7 = (Cpu()-t);
    Console.WriteLine($"{n} {s.Readings.Length} solve {a:0.0} next {b:0.0} with mirrors {c:0.0} | setup {t1:0.0} start {t2:0.0} lm {t3:0.0} ({fit.Convergence.Iterations}) adjust {t4:0.0} tests {t5:0.0} snoop {t6:0.0} plan {t7:0.0} loose {p.LooseFreedoms} red {p.Redundancy}");
    }}
}

static double Cpu() => System.Diagnostics.Process.GetCurrentProcess().UserProcessorTime.TotalMilliseconds;
