using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// A plan made ready, and what its futures come to. The rooms start no threads: whoever has hands to spare runs disjoint
/// ranges with a worker each. The outcome is the same for any number of workers and any order of the ranges.
/// </summary>
public sealed class Simulation
{
    public const int MostFutures = 1_000_000;

    readonly Model _model;
    readonly List<Course> _workers = [];

    Simulation(Model model, int futures)
    {
        _model = model;
        Courses = new(model.Seed, futures, model.Lines.Length, model.MilestoneJobs.Length, model.Income.MonthStart.Length);
    }

    public Courses Courses { get; }

    internal Model Model => _model;

    internal IReadOnlyList<Course> Workers => _workers;

    /// <exception cref="RefusedException">The plan is impossible, or the futures are too few or too many.</exception>
    public static Simulation Of(PlanInput input, ulong seed, int futures)
    {
        if (futures is < Spread.FewestFutures or > MostFutures)
            throw new RefusedException(Refusal.Of("futures", $"{futures}", $"give a whole number from {Spread.FewestFutures} to {MostFutures}"));
        return new(Compile.Of(input, seed), futures);
    }

    /// <summary>Futures that one worker takes at a time.</summary>
    const int Chunk = 64;

    /// <summary>All futures, shared out among so many workers.</summary>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    public Simulation Run(Hands? hands = null, int workers = 1, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        var at = Enumerable.Range(0, hands is null ? 1 : workers).Select(_ => Worker()).ToArray();
        var done = 0;
        void Share(int w)
        {
            for (var from = w * Chunk; from < Courses.Count; from += at.Length * Chunk)
            {
                cancel.ThrowIfCancellationRequested();
                var count = Math.Min(Chunk, Courses.Count - from);
                Run(at[w], from, count);
                progress?.Report(Interlocked.Add(ref done, count) / (double)Courses.Count);
            }
        }
        if (hands is null) Share(0);
        else hands(at.Length, Share);
        return this;
    }

    /// <summary>A worker for one thread; ask for all of them before the first runs.</summary>
    public Course Worker()
    {
        var worker = new Course(_model);
        _workers.Add(worker);
        return worker;
    }

    /// <summary>Futures from <paramref name="from"/> on; each must be run once, by one worker. Allocates nothing.</summary>
    public void Run(Course worker, int from, int count)
    {
        var c = Courses;
        var milestones = _model.MilestoneJobs;
        for (var f = from; f < from + count; f++)
        {
            worker.Run(f, c.Balance.AsSpan(f * c.Months, c.Months));
            c.FinishOf[f] = worker.Finish;
            c.HoursOf[f] = (float)worker.Hours;
            c.MoneyOf[f] = (float)worker.Purse.Spent;
            c.DryOf[f] = worker.Purse.Dry;
            for (var m = 0; m < milestones.Length; m++)
            {
                var reached = 0f;
                foreach (var j in milestones[m]) reached = Math.Max(reached, worker.Ended[j]);
                c.Reached[f * milestones.Length + m] = reached;
            }
            if (f >= Futures.Courses.KeptBars) continue;
            var bar = f * _model.Lines.Length;
            worker.Started.CopyTo(c.Starts, bar);
            worker.Ended.CopyTo(c.Ends.AsSpan(bar));
        }
    }

    public PlanForecast Forecast() => new Harvest(this).Forecast();
}
