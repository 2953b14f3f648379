using Google.OrTools.Sat;
using WitnessMark.PlanningOffice.Order;

namespace WitnessMark.OuterRoom;

/// <summary>The exact finish by CP-SAT: intervals on cumulative resources, begun from the hint, bounded from both sides.</summary>
public sealed class CpSatFinish : IExactFinish
{
    public Finish? Run(Project project, Schedule hint, int bound, TimeSpan limit, int workers, Action<Finish> better, CancellationToken stop)
    {
        try
        {
            return Solve(project, hint, bound, limit, workers, better, stop);
        }
        catch (Exception e) when (e is DllNotFoundException or BadImageFormatException or EntryPointNotFoundException or TypeInitializationException)
        {
            return null;
        }
    }

    static Finish Solve(Project project, Schedule hint, int bound, TimeSpan limit, int workers, Action<Finish> better, CancellationToken stop)
    {
        var longest = hint.Makespan(project);
        var model = new CpModel();
        var starts = Model(model, project, hint, bound, longest);
        using var solver = new CpSolver { StringParameters = FormattableString.Invariant($"max_time_in_seconds:{Math.Max(0.01, limit.TotalSeconds):0.###} num_workers:{workers} {Environment.GetEnvironmentVariable("WMX")}") };
        using var watch = new Watch(starts, better);
        using var _ = stop.Register(solver.StopSearch);
        // A stop that comes before the search begins would be lost.
        if (stop.IsCancellationRequested) return new Finish(hint, bound);
        var status = solver.Solve(model, watch);
        var best = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? new Schedule([.. starts.Select(s => (int)solver.Value(s))]) : hint;
        // Infeasible never comes, since the hint is a solution; unknown leaves the bound that was there.
        return new Finish(best, status == CpSolverStatus.Optimal ? best.Makespan(project) : Math.Max(bound, BoundOf(solver, status)));
    }

    static int BoundOf(CpSolver solver, CpSolverStatus status) => status == CpSolverStatus.Feasible ? (int)Math.Ceiling(solver.BestObjectiveBound - 1e-6) : 0;

    static IntVar[] Model(CpModel model, Project project, Schedule hint, int bound, int longest)
    {
        var end = model.NewIntVar(bound, longest, "end");
        var starts = new IntVar[project.Activities.Length];
        var intervals = new IntervalVar[starts.Length];
        for (var i = 0; i < starts.Length; i++)
        {
            var a = project.Activities[i];
            starts[i] = model.NewIntVar(a.Release, longest - a.Duration, "");
            intervals[i] = model.NewFixedSizeIntervalVar(starts[i], a.Duration, "");
            model.AddHint(starts[i], hint.Starts[i]);
            model.Add(end >= starts[i] + a.Duration);
        }
        for (var i = 0; i < starts.Length; i++)
            foreach (var s in project.Activities[i].Successors) model.Add(starts[s] >= starts[i] + project.Activities[i].Duration);
        for (var r = 0; r < project.Capacities.Length; r++)
        {
            var shared = model.AddCumulative(project.Capacities[r]);
            for (var i = 0; i < starts.Length; i++)
                if (project.Activities[i].Needs[r] > 0 && project.Activities[i].Duration > 0) shared.AddDemand(intervals[i], project.Activities[i].Needs[r]);
        }
        model.AddHint(end, longest);
        model.Minimize(end);
        return starts;
    }

    sealed class Watch(IntVar[] starts, Action<Finish> better) : CpSolverSolutionCallback
    {
        public override void OnSolutionCallback() =>
            better(new Finish(new Schedule([.. starts.Select(s => (int)Value(s))]), (int)Math.Ceiling(BestObjectiveBound() - 1e-6)));
    }
}
