using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Judging;

/// <summary>Five steps, best first, and gone altogether.</summary>
public enum ConditionGrade { AsNew, Sound, Worn, Poor, Lost, Missing }

/// <summary>A part graded, with what was seen. The last that stands is its condition; the earlier ones stay as its history.</summary>
/// <param name="Evidence">What was seen, in words: never empty, for a grade without evidence cannot be judged again.</param>
/// <param name="Readings">Ids of readings that speak for it.</param>
public sealed record ConditionSeen(
    Guid Id, Guid VehicleId, Guid PartId, ConditionGrade Grade, string Evidence, ImmutableArray<Guid> Readings,
    ImmutableArray<string> Pictures, DateTimeOffset At, string Device) : IFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("part graded", PartId) ?? Check.Known("grade", Grade) ?? Check.Named("evidence", Evidence)
        ?? Rows.Each("readings", Readings, r => Rows.Pointed("reading", r)) ?? Rows.Photographed(Pictures);
}

/// <summary>A grade as people write it, and what it means.</summary>
public static class Grades
{
    public static string Words(this ConditionGrade grade) => grade switch
    {
        ConditionGrade.AsNew => "as new",
        _ => grade.ToString().ToLowerInvariant(),
    };

    public static string Meaning(this ConditionGrade grade) => grade switch
    {
        ConditionGrade.AsNew => "within the sizes it was made to; clean it and fit it",
        ConditionGrade.Sound => "fit for service once cleaned and protected",
        ConditionGrade.Worn => "wear or damage that ordinary repair makes good",
        ConditionGrade.Poor => "more has to be made new than is left",
        ConditionGrade.Lost => "of use as a pattern only",
        _ => "not there; known from a photograph, a borrowed one or the maker's list",
    };

    /// <summary>The grade written so, or null.</summary>
    public static ConditionGrade? Read(string text)
    {
        foreach (var grade in Enum.GetValues<ConditionGrade>())
            if (string.Equals(grade.Words(), text.Trim(), StringComparison.OrdinalIgnoreCase)) return grade;
        return null;
    }

    /// <summary>The last that stands of each part: by time, then by arrival.</summary>
    public static ImmutableDictionary<Guid, ConditionSeen> Latest(IEnumerable<ConditionSeen> standing) =>
        standing.GroupBy(c => c.PartId).ToImmutableDictionary(g => g.Key, g => g.OrderBy(c => c.At).Last());
}
