using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths.Units;
using static WitnessMark.FrontOffice.ReturnLoan.ListPoints;
using static WitnessMark.FrontOffice.ReturnLoan.ReturnLoan;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>What the survey of a sample says is still open.</summary>
static partial class SurveyPoints
{
    /// <summary>A reading with less of it is checked by no other: its slip would go unseen (as on the measuring page).</summary>
    internal const double LeastRedundancy = 0.01;

    /// <summary>Readings asked of the engine for each loose group.</summary>
    internal const int Asked = 20;

    /// <param name="entries">The entry of each reading.</param>
    /// <param name="wantedStd">Wanted standard uncertainty of every dimension, mm.</param>
    public static IEnumerable<OpenPoint> Of(MeasureResult measured, ImmutableArray<Guid> entries, double wantedStd)
    {
        var (sample, plan) = (measured.Sample, measured.Plan);
        if (!plan.Believed.Convergence.Converged)
            return [new("not settled", PointKind.NotCounted, $"The plan did not settle: {plan.Believed.Convergence.Words}", "Sketch the features nearer to their places, or read more between them.")];
        return [.. Doubtful(sample, plan), .. Loose(plan.Believed, wantedStd), .. Mirrors(plan.Believed), .. Unchecked(sample, plan.Believed, entries), .. Unsure(measured, wantedStd)];
    }

    static IEnumerable<OpenPoint> Doubtful(Sample sample, Plan plan)
    {
        foreach (var i in plan.Doubts.Alone.Where(i => !ReadAgain(sample, plan, i)))
        {
            var reading = sample.Readings[i];
            var says = plan.Believed.Readings[i].WouldRead is { } would ? $"; by the others it would be {Shown(reading, would)}" : "";
            yield return new(Key("doubtful", Of(reading), reading.Written), PointKind.Doubtful, $"{Numbered(reading)} is doubtful: it says {Written(reading)}{says}.", "Read it again and withdraw the wrong one.");
        }
        foreach (var group in plan.Doubts.Groups.Where(g => !g.Any(i => ReadAgain(sample, plan, i))))
            yield return new(Key(["doubtful", .. group.Select(i => Of(sample.Readings[i]))]), PointKind.Doubtful,
                $"One of these readings is wrong and no other says which: {string.Join("; ", group.Select(i => $"{i + 1}, {Of(sample.Readings[i])}"))}.", "Read each of them again and withdraw the wrong one.");
    }

    /// <summary>Another reading of the same thing stands that is not under doubt itself.</summary>
    static bool ReadAgain(Sample sample, Plan plan, int doubtful)
    {
        var d = sample.Readings[doubtful];
        return sample.Readings.Any(r => r.Index != doubtful && r.Kind == d.Kind && (r.From, r.To) is var ends && (ends == (d.From, d.To) || ends == (d.To ?? "", d.From)) && !plan.Readings[r.Index].Doubtful);
    }

    static IEnumerable<OpenPoint> Loose(Plan plan, double wantedStd)
    {
        if (plan.Loose.IsEmpty) yield break;
        var best = Next.Advise(plan, wantedStd, Asked).Readings;
        foreach (var group in plan.Loose)
        {
            var next = best.FirstOrDefault(n => group.Ids.Contains(n.From) || n.To is { } to && group.Ids.Contains(to));
            yield return new(Key(["loose", .. group.Ids]), PointKind.Loose,
                $"{string.Join(", ", group.Ids)} {(group.Ids.Length == 1 ? "is" : "are")} not held: {Indices().Replace(group.Reason, "")}.",
                $"{(next is null ? $"Take {Counted(group.ReadingsMissing, "more reading")} to it" : $"Read {Of(next)}")}, and one more so that each is checked.");
        }
    }

    static IEnumerable<OpenPoint> Mirrors(Plan plan) =>
        from m in plan.Mirrors
        let about = m.About.Length == 2 ? $" of the line {m.About[0]} – {m.About[1]}" : ""
        select new OpenPoint(Key(["mirror", .. m.Flips]), PointKind.Mirror, $"Two shapes fit as well: {string.Join(", ", m.Flips)} may lie on either side{about}.",
            m.Deciding.IsEmpty ? "Take one more reading to it from elsewhere." : $"Read the distance {m.Deciding[0].From} – {m.Deciding[0].To}: it decides.");

    static IEnumerable<OpenPoint> Unchecked(Sample sample, Plan plan, ImmutableArray<Guid> entries)
    {
        var moving = plan.Loose.SelectMany(g => g.Ids).ToHashSet();
        var alone = sample.Readings.Where(r => plan.Readings[r.Index] is { Used: true, RedundancyNumber: < LeastRedundancy } && !r.Exact && !Repeated(r.Written)
            && !moving.Contains(r.From) && (r.To is not { } to || !moving.Contains(to))).ToList();
        if (alone.Count > 1 && plan.Redundancy == 0)
            return [new("unchecked", PointKind.Unchecked, $"Nothing checks these {alone.Count} readings: a misread one would go unseen.", "Take a few more between the same features.")];
        return alone.Select(r => new OpenPoint(Key("unchecked", entries[r.Index].ToString()), PointKind.Unchecked,
            $"Nothing checks {Numbered(r, inner: true)}: a slip in it would go unseen.", r.To is { } to ? $"Read it once more, or another reading to {r.From} or {to}." : "Read it once more."));
    }

    /// <summary>Written as several readings of the same thing: those check one another.</summary>
    internal static bool Repeated(string written) => written.Contains(';');

    /// <summary>The fewest features that account for every dimension less sure than wanted: the one in most of them first.</summary>
    static IEnumerable<OpenPoint> Unsure(MeasureResult measured, double wantedStd)
    {
        var plan = measured.Plan.Believed;
        var limit = wantedStd * (1 + 1e-9);
        foreach (var f in plan.Features.Where(f => f is { Loose: false, Size: { } size } && size.Std > limit))
            yield return new(Key("unsure size", f.Id), PointKind.Unsure, $"The size of {f.Id} is only sure to {PlusMinus(f.Size!.Value.Std)}; wanted is {PlusMinus(wantedStd)}.", "Read it again with a finer instrument.");
        foreach (var (worst, count, other, std) in Fewest(plan.Distances(), limit))
        {
            var next = measured.Next?.Readings.FirstOrDefault(n => n.From == worst || n.To == worst) ?? measured.Next?.Readings.FirstOrDefault();
            yield return new(Key("unsure", worst), PointKind.Unsure,
                $"{Counted(count, "distance")} of {worst} {(count == 1 ? "is" : "are")} less sure than {PlusMinus(wantedStd)}; the least sure is to {other}: {PlusMinus(std)}.",
                next is null ? $"Read one more distance to {worst}, or with a finer instrument." : $"Read {Of(next)}.");
        }
    }

    /// <summary>Each with how many of the distances are its, and the least sure of them.</summary>
    /// <param name="limit">Standard uncertainty past which a distance counts, mm.</param>
    internal static IEnumerable<(string Worst, int Count, string Other, double Std)> Fewest(IEnumerable<PairDistance> distances, double limit)
    {
        var over = distances.Where(d => d.Std > limit).ToList();
        while (over.Count > 0)
        {
            var worst = over.SelectMany(d => new[] { d.From, d.To }).CountBy(id => id).MaxBy(c => c.Value).Key;
            var its = over.Where(d => d.From == worst || d.To == worst).ToList();
            over.RemoveAll(its.Contains);
            var least = its.MaxBy(d => d.Std);
            yield return (worst, its.Count, least.From == worst ? least.To : least.From, least.Std);
        }
    }

    static string Numbered(Reading r, bool inner = false) => $"{(inner ? "reading" : "Reading")} {r.Index + 1}, {Of(r)}{(inner ? $" {Written(r)}" : "")},".TrimEnd(inner ? ',' : ' ');

    static string Of(Reading r) => Named(KindRule.Of(r.Kind).Words, r.From, r.To ?? "");

    static string Of(NextReading n) => $"{Named(KindRule.Of(n.Kind).Words, n.From, n.To ?? "")}{(n.Instrument.Length > 0 ? $" by {n.Instrument}" : "")}";

    static string Written(Reading r) => r.Written.Length > 0 ? r.Written : Shown(r, r.Value);

    static string Shown(Reading r, double value) => KindRule.Of(r.Kind).Measure is Measure.Angle or Measure.Direction ? AngleWriter.Write(value) : LengthWriter.Write(value);

    /// <summary>Two standard uncertainties (JCGM 100, 6.3.3), never finer than 0.001 mm.</summary>
    internal static string PlusMinus(double std) => string.Create(CultureInfo.InvariantCulture, $"± {2 * std:0.###} mm");

    /// <summary>The engine's place in its list, from 0: no word for a person.</summary>
    [GeneratedRegex(@" \(index [^)]*\)")]
    private static partial Regex Indices();
}
