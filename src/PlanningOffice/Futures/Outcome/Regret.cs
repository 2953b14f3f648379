using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// What a finding is worth to a choice between two plans (remake or buy, go on or stop): the choice is made by the least mean
/// loss, once without and once with the finding known. The regret that looking takes away is the difference (expected value of
/// sample information: H. Raiffa and R. Schlaifer, Applied Statistical Decision Theory, 1961).
/// </summary>
/// <param name="Blind">Mean loss of the better plan when nobody looks.</param>
/// <param name="Looked">Mean loss when the better plan is taken for each finding.</param>
/// <param name="IfFound">Which plan is better when it is so: 0 the first, 1 the second; <paramref name="IfNot"/> likewise.</param>
public sealed record Regret(double Blind, double Looked, int IfFound, int IfNot)
{
    public double Saved => Blind - Looked;

    /// <summary>Loss is money, plus what the person says a day is worth, in the purse's currency.</summary>
    /// <param name="a">Both run with one seed and number of futures, and both holding the discovery.</param>
    public static Regret Of(Simulation a, Simulation b, Guid discovery, double dayWorth)
    {
        if (a.Courses.Seed != b.Courses.Seed || a.Courses.Count != b.Courses.Count)
            throw new RefusedException(Refusal.Of("two plans", null, "compare two runs of one seed and one number of futures"));
        var find = Array.Find(a.Model.Finds, x => x.Of.Id == discovery);
        if (find.Of is null) throw new RefusedException(Refusal.Of("discovery", $"{discovery}", "name one that an open job of the plan may find"));
        Span<double> loss = stackalloc double[4];
        for (var f = 0; f < a.Courses.Count; f++)
        {
            var so = Draws.IsSo(a.Model, find, f) ? 2 : 0;
            loss[so] += a.Courses.Money[f] + dayWorth * a.Courses.Finish[f];
            loss[so + 1] += b.Courses.Money[f] + dayWorth * b.Courses.Finish[f];
        }
        var n = a.Courses.Count;
        return new(Math.Min(loss[0] + loss[2], loss[1] + loss[3]) / n, (Math.Min(loss[0], loss[1]) + Math.Min(loss[2], loss[3])) / n,
            loss[2] <= loss[3] ? 0 : 1, loss[0] <= loss[1] ? 0 : 1);
    }
}
