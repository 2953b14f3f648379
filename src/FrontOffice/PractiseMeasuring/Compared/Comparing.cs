using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.FrontOffice.PractiseMeasuring.Compared;

/// <summary>Lays the true sizes beside those found.</summary>
static class Comparing
{
    public static PracticeComparison Run(PracticeRequest request, CancellationToken stop)
    {
        var taken = PracticeTaken.Of(request);
        if (taken.Refused.FirstOrDefault() is { Value: { } why } bad) throw new RefusedException(new Refusal($"reading {bad.Key + 1}, {why}"));
        var plan = Solved(taken.Sample, stop);
        var checks = taken.Checks.Select(c => new ReadBeside(c.Row, c.Instrument, c.Value, c.Sigma, s => c.Length * (1 + (c.Up ? s.Up : s.Across)))).ToImmutableArray();
        var beside = taken.Sample.Readings.Select((r, i) => new ReadBeside(taken.Rows[i], r.Instrument, r.Value, r.Sigma, s => taken.Plate.True(r.Kind, r.From, r.To, s))).ToImmutableArray();
        var (fit, misread) = PrintFit.WithoutMisread([.. checks, .. beside]);
        // A check line misread would bend every size: what is set aside there is not reckoned with either.
        var good = checks.RemoveAll(misread.Contains);
        var print = good.IsEmpty ? PrintFit.None : PrintFit.Of(good);
        var sizes = Sizes(taken, plan, print);
        var scatter = Scattering.Of(request, fit);
        var off = scatter.Where(s => s.Worse || s.Better).ToDictionary(s => s.Instrument, s => s.Std, StringComparer.OrdinalIgnoreCase);
        int? withOwn = off.Count == 0 ? null : Sizes(taken, Solved(WithOwn(taken.Sample, off), stop), print).Count(s => s.Inside);
        var freedom = Math.Max(1, (int)Math.Round(fit.Freedom));
        var found = new PracticeComparison(
            request.Number, sizes, Sizes(taken, plan, PrintFit.None).Count(s => s.Inside), withOwn,
            new(fit.WeightedSumOfSquares, freedom, ChiSquare.Quantile(0.025, freedom), ChiSquare.Quantile(0.975, freedom)),
            new(Way(taken, good, up: false, print), Way(taken, good, up: true, print)), scatter,
            [.. misread.OrderBy(m => m.Row).Select(m => Misread(request, taken, plan, fit, m))], []);
        return found with { Words = Verdict.Of(found) };
    }

    static Plan Solved(Sample sample, CancellationToken stop)
    {
        var plan = sample.Readings.IsEmpty ? null : Adjust.Solve(sample, searchMirrors: false, stop);
        return plan is { Convergence.Converged: true, Believed.LooseFreedoms: 0 } ? plan
            : throw new RefusedException(Refusal.Of("readings", $"{sample.Readings.Length}", "take the rest of the list first: the true sizes are shown when every place and size is held by what you read"));
    }

    static ImmutableArray<SizeCompared> Sizes(PracticeTaken taken, Plan plan, PrintFit print)
    {
        var holes = plan.Believed.Features.Where(f => f.Kind == FeatureKind.Hole)
            .Select(f => Size($"⌀ {f.Id}", ReadingKind.Diameter, f.Id, null, f.Size!.Value));
        var apart = plan.Believed.Distances().Select(d => Size($"{d.From} – {d.To}", ReadingKind.CentreDistance, d.From, d.To, new(d.Distance, d.Std)));
        return [.. holes, .. apart];

        SizeCompared Size(string what, ReadingKind kind, string from, string? to, Uncertain found)
        {
            double True(PrintScale s) => taken.Plate.True(kind, from, to, s);
            // A circle drawn longer one way is an ellipse: which way it was read nobody wrote down.
            var round = kind == ReadingKind.Diameter ? (print.Scale.Across - print.Scale.Up) * True(default) / (2 * Math.Sqrt(2)) : 0;
            return new(what, True(default), True(print.Scale), found, 2 * Math.Sqrt(found.Std * found.Std + print.Variance(True) + round * round));
        }
    }

    static MisreadFound Misread(PracticeRequest request, PracticeTaken taken, Plan plan, PrintFit fit, ReadBeside read)
    {
        var written = request.Readings[read.Row];
        var index = taken.Rows.IndexOf(read.Row);
        var what = written.To.Length > 0 ? $"{written.Kind} {written.From} – {written.To}" : $"{written.Kind} {written.From}";
        return new(read.Row, what, written.Value, read.Value, read.True(fit.Scale), index >= 0 && plan.Doubts.Indices.Contains(index));
    }

    static Uncertain? Way(PracticeTaken taken, ImmutableArray<ReadBeside> good, bool up, PrintFit print) =>
        !taken.Checks.Any(c => c.Up == up && good.Any(g => g.Row == c.Row)) ? null
        : up ? new(print.Scale.Up, Math.Sqrt(print.Up2)) : new(print.Scale.Across, Math.Sqrt(print.Across2));

    /// <summary>The same readings, each as good as the person has shown himself to be.</summary>
    static Sample WithOwn(Sample sample, Dictionary<string, double> own) => sample with
    {
        Readings = [.. sample.Readings.Select(r => own.TryGetValue(r.Instrument.Trim(), out var std) ? r with { Sigma = std } : r)],
    };
}
