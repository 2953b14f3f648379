using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Offers;
using WitnessMark.DrawingOffice.Intent.Patterns.Search;
using WitnessMark.DrawingOffice.Intent.Patterns.Weights;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Words;

/// <summary>From a finished search to the records that a person is shown.</summary>
sealed class Telling(Explained way, Plan plan, Making making, ImmutableArray<Rivals> rivals, ImmutableArray<Hypothesis> refused, Settle.Settled settled)
{
    /// <summary>Near misses that are told; more would bury what was found.</summary>
    const int MostRejected = 8;

    /// <summary>Chance below which a forced condition is said to be contradicted.</summary>
    const double Contradicted = 0.001;

    readonly Shape _shape = way.Course.Shape;
    readonly double[] _x = settled.Belief.X;

    public IntentPlan Told()
    {
        var groups = new Grouping(way.Course, way.Frames).All().ToImmutableArray();
        var held = groups.Select(Finding).OrderBy(f => f.Standing == Standing.Implied).ToList();
        ImmutableArray<Finding> findings = [.. held, .. refused.Select(h => Unheld(h, Standing.Refused)), .. Rejected()];
        var undecided = rivals.Select(Undecided).ToImmutableArray();
        var test = Test();
        return new(plan, [.. _shape.Known.Select(f => Meant(f, groups))], findings, undecided, way.Origins, settled.Rank, test, [.. Cautions(findings, test)], Summary(held, undecided));
    }

    Finding Finding(Group g)
    {
        var (chi, freedom, log) = (g.From.Sum(t => t.Verdict.ChiSquare), g.From.Sum(t => t.Verdict.Freedom), (double?)g.From.Sum(t => t.LogOdds));
        // What the person forced was weighed against nothing.
        if (g.Standing == Standing.Forced) log = null;
        var moved = g.From.Select(t => t.Moved).OfType<Move>().OrderByDescending(m => m.Distance).Select(m => (Move?)m).FirstOrDefault();
        return new(KeyOf(g), g.Kind, [.. g.Features.Distinct().Select(_shape.Id)], g.About, g.Nominal, g.Standing, chi, freedom, log, moved, PatternWords.Of(g, _shape, _x));
    }

    string KeyOf(Group g) => Keys.Of(g.Kind, g.Features.Select(_shape.Id), g.About, g.Nominal);

    Finding Unheld(Hypothesis h, Standing standing)
    {
        var verdict = Weighed(h);
        // What the person refused was weighed against nothing; of the others the same odds count by which the search takes a pattern.
        double? log = standing == Standing.Refused ? null : verdict.Log + h.LogPrior + verdict.Freedom * way.PerFreedom(h);
        var why = standing == Standing.Refused ? "left out, as you asked"
            : verdict.ChiSquare > 10.8 ? Outside(h, verdict)
            : log < Greedy.Enough(h.Kind) ? "this may as well be chance"
            : "likely by itself, yet it does not go with what was taken";
        var name = Keys.Of(h, _shape);
        return new(name, h.Kind, [.. h.Features.Distinct().Select(_shape.Id)], h.About, h.Nominal, standing, verdict.ChiSquare, verdict.Freedom, log, null,
            $"{PatternWords.Names([.. h.Features.Distinct().Select(_shape.Id)])}, {Short(h.Kind)}: {why}.");
    }

    string Outside(Hypothesis h, Verdict v)
    {
        var far = $"the readings stand {Far(v)} of what measuring and making allow";
        ImmutableArray<int> worn = [.. h.Features.Distinct().Where(IsWorn)];
        return worn.IsEmpty ? far : $"left as measured: {States(worn)}; {far}";
    }

    /// <summary>Marked worn, rusted or bent: its readings bear on what was made as far as that allows.</summary>
    bool IsWorn(int f) => _shape.Features[f].Condition is FeatureCondition.Worn or FeatureCondition.Rusted or FeatureCondition.Bent;

    string States(ImmutableArray<int> features) =>
        PatternWords.Names([.. features.Select(f => $"{_shape.Id(f)} is {_shape.Features[f].Condition.ToString().ToLowerInvariant()}")]);

    static string Far(Verdict v) => $"{Math.Sqrt(v.ChiSquare / Math.Max(1, v.Freedom)).ToString("0.0", CultureInfo.InvariantCulture)} times outside";

    static string Short(PatternKind kind) => kind switch
    {
        PatternKind.EqualSize => "one size",
        PatternKind.InLine or PatternKind.OnEdge => "in line",
        PatternKind.Parallel => "parallel",
        PatternKind.Square => "square",
        _ => "held together",
    };

    Verdict Weighed(Hypothesis h) => Weigher.Of([.. h.Parts.Select(p => Slope.Of(p, _shape, settled.Belief))], settled.Belief, _x);

    /// <summary>What came near and was not taken, nearest first.</summary>
    IEnumerable<Finding> Rejected() =>
        Sizes.Alike(_shape).Concat(Directions.Of(_shape).Where(h => h.Nominal is null)).Concat(way.Frames.SelectMany(f => Rows.InLine(f, _x)))
            .Where(h => !refused.Any(r => r.Kind == h.Kind && r.Features.ToHashSet().SetEquals(h.Features)))
            .Select(h => (h, Verdict: Weighed(h)))
            .Where(h => h.Verdict.Freedom > 0 && h.Verdict.ChiSquare < 60)
            .OrderBy(h => h.Verdict.ChiSquare).Take(MostRejected).Select(h => Unheld(h.h, Standing.Rejected));

    MeantFeature Meant(int f, ImmutableArray<Group> groups)
    {
        var nominal = groups.FirstOrDefault(g => g.Kind == PatternKind.RoundSize && g.Features.Contains(f))?.Nominal;
        double? size = _shape.HasSize(f) ? nominal?.Value ?? _shape.Size(f, _x) : null;
        var length = _shape.Kind(f) == FeatureKind.Slot ? _shape.SlotLength(f, _x) : (double?)null;
        var turn = _shape.HasTurn(f) ? _shape.Turn(f, _x) : 0;
        return new(_shape.Id(f), _shape.Kind(f), _shape.At(f, _x), turn, size, length, _shape.At(f, _x).DistanceTo(_shape.At(f, _shape.Start)));
    }

    Undecided Undecided(Rivals r)
    {
        var (first, second) = (Keys.Of(r.First.Hypothesis, _shape), Keys.Of(r.Second, _shape));
        var slope = Slope.Of(r.First.Hypothesis.Parts[0], _shape, settled.Belief);
        var measuring = Math.Sqrt(plan.Solver.Variance(plan.Fit, slope.Columns, slope.Rates));
        var apart = Math.Abs(r.First.Hypothesis.Nominal!.Value - r.Second.Nominal!.Value);
        // Where the ± of measuring is the smaller part of it, a finer reading of this one part changes little.
        var decides = measuring * measuring > slope.Before / 2;
        var what = string.Join(" to ", r.First.Hypothesis.Features.Distinct().Take(2).Select(_shape.Id));
        var reading = decides ? FormattableString.Invariant($"{what}, to ± {apart / 2:0.00} mm") : null;
        var advice = decides ? $"Measure {reading}." : $"No reading of this part can tell, since {making.Name} strays as far; a second part, or its mate, would.";
        return new(first, second, Math.Exp(r.LogOdds), reading,
            $"{what}: {r.First.Hypothesis.Nominal.Name} or {r.Second.Nominal.Name}, {PatternWords.Odds(r.LogOdds)} for the {(r.LogOdds < 0 ? "second" : "first")}. {advice}");
    }

    GlobalTest Test()
    {
        if (settled.Rank == 0) return new(0, 0, 0, double.PositiveInfinity, true);
        var high = ChiSquare.Quantile(0.975, settled.Rank);
        return new(settled.ChiSquare, settled.Rank, ChiSquare.Quantile(0.025, settled.Rank), high, settled.ChiSquare <= high);
    }

    IEnumerable<string> Cautions(IEnumerable<Finding> findings, GlobalTest test)
    {
        if (!test.Passes)
            yield return FormattableString.Invariant($"All that was found, taken together, is {Math.Sqrt(test.Statistic / test.Redundancy):0.0} times as far from the readings as measuring and making allow: look through it before the drawing is used.");
        foreach (var f in findings.Where(f => f.Standing == Standing.Forced && f.Tail < Contradicted))
            yield return FormattableString.Invariant($"You asked for {f.Key}, yet the readings speak against it (chi-square {f.ChiSquare:0.0} with {f.Freedom} {(f.Freedom == 1 ? "degree" : "degrees")} of freedom).");
        if (way.OverNext < Review.Even && findings.Any(f => f.Standing == Standing.Accepted))
            yield return $"A part set out {(way.Places.Listed > 0.3 ? "less" : "more")} by round figures explains the readings about as well ({PatternWords.Odds(way.OverNext)} for what is shown): a second part, or finer readings, would tell.";
        var inFindings = findings.Where(f => f.Holds).SelectMany(f => f.Features).ToHashSet();
        ImmutableArray<int> worn = [.. _shape.Known.Where(IsWorn)];
        ImmutableArray<int> fitted = [.. worn.Where(f => inFindings.Contains(_shape.Id(f)))], alone = [.. worn.Except(fitted)], repaired = [.. _shape.Known.Where(_shape.IsRepaired)];
        if (!fitted.IsEmpty) yield return $"{States(fitted)}: what is told of {(fitted.Length == 1 ? "it" : "them")} is what {(fitted.Length == 1 ? "it was" : "they were")} made to, as far as the wear marked allows.";
        if (!alone.IsEmpty) yield return $"Left as measured: {States(alone)}, and no pattern takes {(alone.Length == 1 ? "it" : "them")} in.";
        if (!repaired.IsEmpty) yield return $"Repaired, and so left out of every pattern and drawn as measured: {PatternWords.Names([.. repaired.Select(_shape.Id)])}{(repaired.All(f => _shape.Features[f].Condition == FeatureCondition.Repaired) ? "" : " (a corner goes with its edge)")}.";
        if (!plan.Loose.IsEmpty) yield return $"Loose and left out: {PatternWords.Names([.. plan.Loose.SelectMany(l => l.Ids).Distinct()])}.";
        if (!plan.Mirrors.IsEmpty) yield return "A second shape fits the readings as well; what was found here belongs to the first.";
        if (settled.Left > 1e-4) yield return "What was found cannot all hold at once to the last hundredth; refuse what you doubt most.";
    }

    string Summary(List<Finding> held, ImmutableArray<Undecided> undecided)
    {
        if (held.Count == 0) return "No pattern stands out: nothing was meant that these readings show, or too little was read.";
        var patterns = held.Count(f => f.Nominal is null && f.Standing != Standing.Implied);
        var sizes = held.Count(f => f.Nominal is not null);
        var origin = way.Origins[0];
        var made = sizes == 0 ? "" : $" It was drawn in {(origin.Name == "inch" ? "inches" : "millimetres")} ({PatternWords.Odds(Math.Log(origin.Probability / Math.Max(1e-12, 1 - origin.Probability)))}).";
        var doubt = undecided.IsEmpty ? "" : $" {undecided.Length} {(undecided.Length == 1 ? "value is" : "values are")} undecided.";
        return $"{patterns} {(patterns == 1 ? "pattern" : "patterns")} and {sizes} listed {(sizes == 1 ? "size" : "sizes")}.{made}{doubt}";
    }
}
