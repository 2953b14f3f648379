using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Orders;

/// <summary>Someone who sells or works for the vehicle.</summary>
/// <param name="Does">"sells bearings", "plating".</param>
public sealed record Firm(Guid Id, Guid VehicleId, string Name, string Does, string Contact, string Notes) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Check.Named("firm's name", Name) ?? Check.Short("what the firm does", Does) ?? Check.Short("contact", Contact) ?? Check.Short("notes", Notes);
}

/// <summary>What a firm asked for a part or piece of work.</summary>
/// <param name="PartId">Null for material or work on nothing in the tree.</param>
/// <param name="Route">Which way of making the part good it prices: buying it new, second-hand, sending it out.</param>
/// <param name="Price">For all of it, carriage in.</param>
/// <param name="LeadDays">Calendar days from order to hand; null when not said.</param>
public sealed record Quote(
    Guid Id, Guid VehicleId, Guid FirmId, Guid? PartId, Route Route, string What, int Quantity, Money Price,
    DateOnly On, DateOnly ValidUntil, int? LeadDays, string Notes) : IDecision
{
    public bool Holds(DateOnly today) => today <= ValidUntil;

    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("firm", FirmId) ?? Check.Known("route", Route) ?? Check.Named("what is quoted", What)
        ?? Rows.Counted("quantity", Quantity, 1) ?? Price.Wrong("quoted price") ?? Rows.Dated("day of the quote", On)
        ?? Rows.Dated("last day of the quote", ValidUntil) ?? Rows.NotBefore("last day of the quote", ValidUntil, "the day it was given", On)
        ?? (LeadDays is { } d ? Rows.Counted("days to deliver", d) : null) ?? Check.Short("notes", Notes);
}
