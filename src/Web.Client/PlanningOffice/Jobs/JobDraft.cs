using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.PlanningOffice.Frame;

namespace WitnessMark.Web.Client.PlanningOffice.Jobs;

/// <summary>A job while it is edited: everything as typed.</summary>
public sealed class JobDraft(Job job)
{
    public string Title { get; set; } = job.Title;

    public WorkKind Kind { get; set; } = job.Kind;

    public TypedThree Hours { get; } = new(job.Hours);

    public TypedThree Cost { get; } = Amount(job.Cost);

    public string Currency { get; set; } = job.Cost.Currency;

    public Needs Needs { get; set; } = job.Needs;

    public HashSet<Guid> After { get; } = [.. job.After];

    public List<LeadDraft> Leads { get; } = [.. job.Leads.Select(l => new LeadDraft(l))];

    public List<DiscoveryDraft> MayFind { get; } = [.. job.MayFind.Select(d => new DiscoveryDraft(d))];

    /// <exception cref="RefusedException">A field cannot be read, or the job cannot be so.</exception>
    public Job Read()
    {
        var read = job with
        {
            Title = Title.Trim(),
            Kind = Kind,
            Hours = Hours.Read("hours"),
            Cost = Cost.Read("cost", Currency.Trim()),
            Needs = Needs,
            After = [.. job.After.Where(After.Contains), .. After.Except(job.After)],
            Leads = [.. Leads.Select(l => l.Read())],
            MayFind = [.. MayFind.Select(d => d.Read(Currency.Trim()))],
        };
        return read.Wrong is { } wrong ? throw new RefusedException(wrong) : read;
    }

    internal static TypedThree Amount(Cost cost) => new(new((double)cost.Low, (double)cost.Likely, (double)cost.High));
}

public sealed class LeadDraft(Lead lead)
{
    public string Words { get; set; } = lead.Words;

    public LeadSide Side { get; set; } = lead.Side;

    public TypedThree Days { get; } = new(lead.Days);

    public TypedThree Price { get; } = JobDraft.Amount(lead.Price);

    public string Currency { get; set; } = lead.Price.Currency;

    /// <summary>Percent.</summary>
    public string Deposit { get; set; } = Told.Number(lead.Deposit * 100);

    public string Ordered { get; set; } = Told.FieldDay(lead.Ordered);

    public bool Here { get; set; } = lead.Here;

    internal Lead Read() => new(
        Words.Trim(), Side, Days.Read($"days of \"{Words}\""), Price.Read($"price of \"{Words}\"", Currency.Trim()),
        Typed.Number($"deposit on \"{Words}\"", Deposit) / 100, Typed.Day($"day \"{Words}\" was ordered", Ordered), Here);
}

public sealed class DiscoveryDraft(Discovery discovery)
{
    public Guid Id => discovery.Id;

    public string Words { get; set; } = discovery.Words;

    /// <summary>Percent.</summary>
    public string Odds { get; set; } = Told.Number(discovery.Odds * 100);

    public string Cause { get; set; } = discovery.Cause;

    public bool? Found { get; set; } = discovery.Found;

    /// <summary>Hours that the first consequence adds.</summary>
    public TypedThree Hours { get; } = new(discovery.Then.Length > 0 ? discovery.Then[0].Hours : default);

    /// <summary>Of a cause newly named (common practice).</summary>
    const double UsualPull = 0.5;

    internal Discovery Read(string currency)
    {
        var hours = Hours.Read($"hours that \"{Words}\" brings");
        var cause = Cause.Trim();
        ImmutableArray<Consequence> then = discovery.Then.Length > 0 ? discovery.Then.SetItem(0, discovery.Then[0] with { Hours = hours })
            : hours.High > 0 ? [new(null, hours, default, WitnessMark.PlanningOffice.Cost.None(currency))] : [];
        return discovery with
        {
            Words = Words.Trim(), Odds = Typed.Number($"odds of \"{Words}\"", Odds) / 100, Cause = cause,
            Pull = cause.Length == 0 ? 0 : discovery.Pull > 0 ? discovery.Pull : UsualPull, Then = then, Found = Found,
        };
    }
}
