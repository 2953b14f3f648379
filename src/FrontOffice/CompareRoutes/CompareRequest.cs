using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Templates;
using WitnessMark.Stores;
using WitnessMark.Stores.Judging;
using WitnessMark.Stores.Orders;

namespace WitnessMark.FrontOffice.CompareRoutes;

/// <summary>A part, the shop it would be made good in, and what is known about it.</summary>
/// <param name="System">Name of its system; may be empty.</param>
/// <param name="HoursAWeek">That the person gives the vehicle; above 0.</param>
public sealed record CompareRequest(Guid Vehicle, Part Part, string System, Shop Shop, DateOnly On, double HoursAWeek)
{
    /// <summary>Kept jobs of the part: they stand as the person edited them; one with a card tells the making.</summary>
    public ImmutableArray<Job> Kept { get; init; } = [];

    /// <summary>The grade that stands; null while nobody has graded it.</summary>
    public ConditionSeen? Condition { get; init; }

    public ImmutableArray<SampleState> Samples { get; init; } = [];

    public ImmutableArray<GivenQuote> Quotes { get; init; } = [];

    /// <summary>Those that stand, in the order they arrived.</summary>
    public ImmutableArray<RateOfExchange> Rates { get; init; } = [];

    /// <summary>Own hours as a multiple of what was guessed.</summary>
    public Func<Job, double> Bias { get; init; } = _ => 1;

    public TemplateTable Table { get; init; } = UsualTable.Table;

    /// <summary>A part that stands as missing in words only counts as missing too, as it does for the plan.</summary>
    public ConditionGrade? Grade => Condition?.Grade
        ?? (Part.Condition.Trim().StartsWith("missing", StringComparison.OrdinalIgnoreCase) ? ConditionGrade.Missing : null);
}

/// <param name="StillMissing">Readings on its list that have not been taken.</param>
public sealed record SampleState(PartSample Sample, int StillMissing);

/// <param name="Firm">Name of the firm that gave it.</param>
public sealed record GivenQuote(Quote Quote, string Firm);
