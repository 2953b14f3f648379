using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice.Templates;

/// <summary>One job that a route usually brings.</summary>
/// <param name="Key">Names the job among those of its part, so that generating again finds it.</param>
/// <param name="Does">What is done, as the title says it: "take off".</param>
/// <param name="Hours">For the first piece.</param>
/// <param name="EachMore">What every further piece takes, as a share of the first, 0 to 1.</param>
/// <param name="Money">Stock and consumables for each piece.</param>
public sealed record JobTemplate(
    string Key, string Does, WorkKind Kind, Rate Hours, double EachMore, Rate Money, Needs Needs,
    ImmutableArray<LeadTemplate> Leads, ImmutableArray<FindTemplate> MayFind)
{
    /// <summary>Hours for a number of pieces: the first whole, each further one <see cref="EachMore"/> of it.</summary>
    /// <param name="pieces">At least 1.</param>
    public ThreePoint HoursFor(int pieces) => Hours.Value * (1 + EachMore * (pieces - 1));
}

/// <summary>Days without own work, and their price.</summary>
/// <param name="Days">Calendar days, however many pieces.</param>
/// <param name="Price">For each piece.</param>
/// <param name="Deposit">Share paid when ordering, 0 to 1.</param>
public sealed record LeadTemplate(string Words, LeadSide Side, Rate Days, Rate Price, double Deposit);

/// <summary>Hidden work that this kind of job often brings to light.</summary>
/// <param name="Odds">0 to 1, a starting value of common practice; what is found corrects it.</param>
/// <param name="Cause">Shared by discoveries that go together; empty when it stands alone.</param>
/// <param name="Pull">How strongly the cause binds it, 0 to 0.95.</param>
/// <param name="Grows">Key of the job of the same part that grows; the looking one when that part has none.</param>
public sealed record FindTemplate(string Words, double Odds, string Cause, double Pull, string Grows, Rate Hours, Rate Money);

/// <summary>The jobs of each route in the order they are done, all editable.</summary>
/// <param name="Currency">Of all its money; ISO 4217 code.</param>
/// <param name="Adjust">Once for each system, when all its parts are back.</param>
public sealed record TemplateTable(string Currency, ImmutableDictionary<Route, ImmutableArray<JobTemplate>> Routes, JobTemplate Adjust);
