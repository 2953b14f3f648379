using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice.Templates;

/// <summary>The jobs of one part, each after the one before it.</summary>
sealed record PartJobs
{
    const string MakeKey = "make";
    const string OffKey = "off";

    readonly PlanFacts _facts;
    readonly TemplateTable _table;
    readonly ImmutableArray<JobTemplate> _templates;

    public PartJobs(Part part, PlanFacts facts, TemplateTable table)
    {
        (Part, _facts, _table) = (part, facts, table);
        Guessed = JobTemplates.IdOf(part.Id, MakeKey);
        var route = part.Route!.Route;
        CardJob = route == Route.Remake ? facts.Standing.FirstOrDefault(j => j.PartId == part.Id && j.Card is not null && j.Id != Guessed)?.Id : null;
        // What is missing cannot be taken off.
        var missing = part.Condition.Trim().StartsWith("missing", StringComparison.OrdinalIgnoreCase);
        _templates = [.. table.Routes.GetValueOrDefault(route, []).Where(t => !(missing && t.Key == OffKey))];
        Jobs = [.. _templates.Where(t => t.Key != MakeKey || CardJob is null).Select(JobOf)];
    }

    public Part Part { get; }

    /// <summary>The job whose card makes the part, where one is kept; its hours, stock and lead times stand for the guessed making.</summary>
    public Guid? CardJob { get; }

    /// <summary>Id of the making job by the table.</summary>
    public Guid Guessed { get; }

    public ImmutableArray<Job> Jobs { get; }

    /// <summary>The one that puts it back.</summary>
    public Guid Last => IdOf(_templates[^1]);

    Guid IdOf(JobTemplate t) => t.Key == MakeKey && CardJob is { } card ? card : JobTemplates.IdOf(Part.Id, t.Key);

    Job JobOf(JobTemplate t)
    {
        var before = _templates.IndexOf(t) - 1;
        return new(
            IdOf(t), _facts.Vehicle, Part.SystemId, Part.Id, $"{Named}: {t.Does}", t.Kind, JobState.Planned,
            t.HoursFor(Part.Quantity), Money(t.Money), t.Needs,
            [.. t.Leads.Select(LeadOf)], before < 0 ? [] : [IdOf(_templates[before])],
            [.. t.MayFind.Select((f, i) => FindOf(t, f, i))], null);
    }

    string Named => Part.Name + (Part.Hand == Hand.None ? "" : $" {Part.Hand}") + (Part.Quantity > 1 ? $" ×{Part.Quantity}" : "");

    Cost Money(Rate each) => Cost.Of(each.Value * Part.Quantity, _table.Currency);

    Lead LeadOf(LeadTemplate l) => new($"{l.Words}, {Named}", l.Side, l.Days.Value, Money(l.Price), l.Deposit, null, false);

    Discovery FindOf(JobTemplate t, FindTemplate f, int at)
    {
        var grows = _templates.FirstOrDefault(x => x.Key == f.Grows);
        return new(
            NamedId.Of(JobTemplates.IdOf(Part.Id, t.Key), $"find {at}"), $"{Named}: {f.Words}", f.Odds, f.Cause, f.Pull,
            [new(grows is null ? null : IdOf(grows), f.Hours.Value, ThreePoint.Zero, Cost.Of(f.Money.Value, _table.Currency))], null);
    }
}
