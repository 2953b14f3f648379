using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.Maths.Units;
using WitnessMark.Stores;
using static WitnessMark.FrontOffice.ReturnLoan.ListPoints;
using static WitnessMark.FrontOffice.ReturnLoan.ReturnLoan;
using static WitnessMark.FrontOffice.ReturnLoan.SurveyPoints;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>
/// What the survey in space of a sample says is still open, as <see cref="SurveyPoints"/> does of the flat one. A set-up is no part
/// of the sample: one that can still tilt is not missed.
/// </summary>
static class SolidPoints
{
    /// <summary>Its readings as entries, so that the sample's own list knows what was read in space.</summary>
    public static IEnumerable<ReadingEntry> Read(SolidResult? solid, Guid sample) =>
        from r in solid?.Sample.Readings ?? []
        from kind in r.Kind == SolidReadingKind.Distance ? [SolidRule.Of(r.Kind).Words, KindRule.Of(ReadingKind.CentreDistance).Words] : new[] { SolidRule.Of(r.Kind).Words }
        select new ReadingEntry(Guid.Empty, sample, kind, r.From, r.To ?? "", r.Written, "", r.Instrument, "", default, "");

    /// <param name="wantedStd">Wanted standard uncertainty of every dimension, mm.</param>
    public static IEnumerable<OpenPoint> Of(SolidResult solid, double wantedStd, CancellationToken stop)
    {
        var plan = solid.Plan;
        if (!plan.Convergence.Converged)
            return [Point(PointKind.NotCounted, $"the shape did not settle: {plan.Convergence.Words}", "Sketch the features nearer to their places, or read more between them.", "not settled")];
        return [.. Doubtful(solid), .. Loose(plan.Believed, wantedStd, stop), .. Mirrors(plan.Believed), .. Unchecked(solid), .. Unsure(solid, wantedStd)];
    }

    /// <summary>Every point says which sheet it is on, for the sample may be surveyed flat too.</summary>
    public static OpenPoint Point(PointKind kind, string words, string todo, params string[] key) => new(Key(["solid", .. key]), kind, $"On the Solid sheet {words}", todo);

    static IEnumerable<OpenPoint> Doubtful(SolidResult solid)
    {
        foreach (var i in solid.Plan.Doubts.Alone.Where(i => !ReadAgain(solid, i)))
        {
            var reading = solid.Sample.Readings[i];
            var says = SolidRule.Of(reading.Kind).IsCondition ? "by the others it does not hold"
                : $"it says {Written(reading)}{(solid.Plan.Believed.Readings[i].WouldRead is { } would ? $"; by the others it would be {Shown(reading, would)}" : "")}";
            yield return Point(PointKind.Doubtful, $"{Named(solid, i)} is doubtful: {says}.", "Read it again and take the wrong one out.", "doubtful", Of(reading), reading.Written);
        }
        foreach (var group in solid.Plan.Doubts.Groups.Where(g => !g.Any(i => ReadAgain(solid, i))))
            yield return Point(PointKind.Doubtful, $"one of these readings is wrong and no other says which: {string.Join("; ", group.Select(i => Named(solid, i)))}.", "Read each of them again and take the wrong one out.",
                ["doubtful", .. group.Select(i => Of(solid.Sample.Readings[i]))]);
    }

    /// <summary>Another reading of the same thing stands that is not under doubt itself.</summary>
    static bool ReadAgain(SolidResult solid, int doubtful)
    {
        var d = solid.Sample.Readings[doubtful];
        return solid.Sample.Readings.Any(r => r.Index != doubtful && (r.Kind, r.At) == (d.Kind, d.At) && ((r.From, r.To) == (d.From, d.To) || (r.To, r.From) == (d.From, d.To)) && !solid.Plan.Readings[r.Index].Doubtful);
    }

    static IEnumerable<OpenPoint> Loose(SolidPlan plan, double wantedStd, CancellationToken stop)
    {
        var groups = plan.Loose.Select(g => (Group: g, Ids: g.Ids.Where(id => plan.Of(id).Kind != SolidKind.SetUp).ToArray())).Where(g => g.Ids.Length > 0).ToList();
        if (groups.Count == 0) yield break;
        var best = SolidNext.Advise(plan, wantedStd, Asked, stop: stop).Readings;
        foreach (var (group, ids) in groups)
        {
            var next = best.FirstOrDefault(n => ids.Contains(n.From) || n.To is { } to && ids.Contains(to));
            yield return Point(PointKind.Loose, $"{string.Join(", ", ids)} {(ids.Length == 1 ? "is" : "are")} not held: {group.Reason.TrimEnd('.')}.",
                $"{(next is null ? $"Take {Counted(group.ReadingsMissing, "more reading")} to it" : $"Read {Of(next)}")}, and one more so that each is checked.", ["loose", .. ids]);
        }
    }

    static IEnumerable<OpenPoint> Mirrors(SolidPlan plan) =>
        from m in plan.Mirrors
        let about = m.About.IsEmpty ? "" : $" of {string.Join(", ", m.About)}"
        select Point(PointKind.Mirror, $"two shapes fit as well: {string.Join(", ", m.Flips)} may lie on either side{about}.",
            m.Deciding.IsEmpty ? "Take one more reading to it from elsewhere." : $"Read the distance {m.Deciding[0].From} – {m.Deciding[0].To}: it decides.", ["mirror", .. m.Flips]);

    static IEnumerable<OpenPoint> Unchecked(SolidResult solid)
    {
        var plan = solid.Plan.Believed;
        var moving = plan.Loose.SelectMany(g => g.Ids).ToHashSet();
        var alone = solid.Sample.Readings.Where(r => plan.Readings[r.Index] is { Used: true, RedundancyNumber: < LeastRedundancy } && !SolidRule.Of(r.Kind).IsCondition && !Repeated(r.Written)
            && !moving.Contains(r.From) && (r.To is not { } to || !moving.Contains(to))).ToList();
        if (alone.Count > 1 && plan.Redundancy == 0)
            return [Point(PointKind.Unchecked, $"nothing checks these {alone.Count} readings: a misread one would go unseen.", "Take a few more between the same features.", "unchecked")];
        return alone.Select(r => Point(PointKind.Unchecked, $"nothing checks {Named(solid, r.Index)} {Written(r)}: a slip in it would go unseen.",
            r.To is { } to ? $"Read it once more, or another reading to {r.From} or {to}." : "Read it once more.", "unchecked", Of(r), r.Written));
    }

    /// <summary>The fewest features that account for every dimension less sure than wanted: the one in most of them first.</summary>
    static IEnumerable<OpenPoint> Unsure(SolidResult solid, double wantedStd)
    {
        var plan = solid.Plan.Believed;
        var limit = wantedStd * (1 + 1e-9);
        foreach (var f in plan.Features.Where(f => f is { Loose: false, Size: { } size } && size.Std > limit))
            yield return Point(PointKind.Unsure, $"the size of {f.Id} is only sure to {PlusMinus(f.Size!.Value.Std)}; wanted is {PlusMinus(wantedStd)}.", "Read it again with a finer instrument.", "unsure size", f.Id);
        foreach (var (worst, count, other, std) in Fewest(plan.Distances(), limit))
        {
            var next = solid.Next?.Readings.FirstOrDefault(n => n.From == worst || n.To == worst) ?? solid.Next?.Readings.FirstOrDefault();
            yield return Point(PointKind.Unsure, $"{Counted(count, "distance")} of {worst} {(count == 1 ? "is" : "are")} less sure than {PlusMinus(wantedStd)}; the least sure is to {other}: {PlusMinus(std)}.",
                next is null ? $"Read one more distance to {worst}, or with a finer instrument." : $"Read {Of(next)}.", "unsure", worst);
        }
    }

    static string Named(SolidResult solid, int index) => $"{solid.Name(index)}, {Of(solid.Sample.Readings[index])}";

    static string Of(SolidReading r) => ListPoints.Named(SolidRule.Of(r.Kind).Words, r.From, r.To ?? "");

    static string Of(SolidNextReading n) => $"{ListPoints.Named(SolidRule.Of(n.Kind).Words, n.From, n.To ?? "")}{(n.Instrument.Length > 0 ? $" by {n.Instrument}" : "")}";

    static string Written(SolidReading r) => r.Written.Length > 0 ? r.Written : Shown(r, r.Value);

    static string Shown(SolidReading r, double value) => SolidRule.Of(r.Kind).Measure is Measure.Angle or Measure.Direction ? AngleWriter.Write(value) : LengthWriter.Write(value);
}
