using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSolid;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>What is open by the sample's own list, its entries and its sizes, before the survey is asked.</summary>
static class ListPoints
{
    /// <param name="solid">What was read in space answers the list too.</param>
    /// <param name="why">Why the readings make no plan; null when they do, or there are none.</param>
    /// <param name="whySizes">The same for the sizes.</param>
    public static IEnumerable<OpenPoint> Of(LoanRequest request, StoredSample stored, SolidResult? solid, string? why, string? whySizes)
    {
        var standing = request.History.Standing;
        var refused = stored.Refused.ToDictionary(r => r.Row, r => r.Sentence);
        foreach (var w in request.Sample.StillMissing(standing.Where(e => !refused.ContainsKey(e.Id.ToString())).Concat(SolidPoints.Read(solid, request.Sample.Id))))
            yield return new(Key("wanted", w.Kind, w.From, w.To), PointKind.Wanted, $"Not read yet: {Named(w.Kind, w.From, w.To)}{(w.Why.Length > 0 ? $" ({w.Why.TrimEnd('.')})" : "")}.", "Read it.");
        if (standing.Count == 0 && request.Solid is null) yield return new("nothing", PointKind.NotCounted, "Nothing of it has been read yet.", "Sketch its features and write down what you read.");
        if (why is not null) yield return new("no plan", PointKind.NotCounted, $"The readings make no plan: {why}", "Mend what it names.");
        if (whySizes is not null) yield return new("no sizes", PointKind.NotCounted, $"The sizes cannot be identified: {whySizes}", "Mend what it names.");
        foreach (var entry in standing)
            if (refused.GetValueOrDefault(entry.Id.ToString()) is { } sentence)
                yield return new(Key("entry", entry.Id.ToString()), PointKind.NotCounted, $"This entry does not count: {Named(entry.Kind, entry.From, entry.To)} {entry.Value}: {sentence}", "Write it down anew and withdraw this one.");
        foreach (var feature in request.Sketch?.Features ?? [])
            if (refused.GetValueOrDefault(feature.Id) is { } sentence)
                yield return new(Key("feature", feature.Id), PointKind.NotCounted, $"{feature.Id} on the sketch does not count: {sentence}", "Mend it on the sketch.");
    }

    public static IEnumerable<OpenPoint> Undecided(MakeToSizeResult sizes) =>
        from m in sizes.Members
        where !m.Told
        select new OpenPoint(Key("size", m.Question.Label), PointKind.Size, $"{m.Question.Label}: what it was made to is undecided. {m.Words}", m.Next?.Words ?? "Measure it again, or another of the same sort.");

    public static string Key(params string[] parts) => string.Join('|', parts.Select(p => p.Trim().ToLowerInvariant()));

    public static string Named(string kind, string from, string to) => $"{kind.Trim()} {from.Trim()}{(to.Trim().Length > 0 ? $" – {to.Trim()}" : "")}";
}
