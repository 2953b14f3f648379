using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Orders;

namespace WitnessMark.Stores.Outwork;

/// <summary>Work that goes out in a box.</summary>
public enum OutTrade { Plating, Blasting, PowderCoating, Painting, Relining, Machining, Welding, Casting, Trimming, Looms, Glass, Other }

/// <summary>A counted and photographed box of parts that went out for work. What is still out follows from the returns.</summary>
/// <param name="ExpectedBack">Null when the firm has not said.</param>
/// <param name="Quoted">For all of it; null when no price was given.</param>
/// <param name="HighTensile">Holds hardened or high-tensile steel: bolts of 10.9 and up, springs.</param>
/// <param name="OldLinings">Holds old friction linings, gaskets or lagging that may be asbestos.</param>
public sealed record Consignment(
    Guid Id, Guid VehicleId, Guid FirmId, OutTrade Trade, DateOnly Out, DateOnly? ExpectedBack, Money? Quoted,
    string Wanted, bool HighTensile, bool OldLinings, ImmutableArray<ConsignmentLine> Lines) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("firm", FirmId) ?? Check.Known("trade", Trade) ?? Rows.Dated("day it went out", Out)
        ?? (ExpectedBack is { } b ? Rows.Dated("day expected back", b) ?? Rows.NotBefore("day expected back", b, "the day it went out", Out) : null)
        ?? Quoted?.Wrong("quoted price") ?? Check.Short("finish wanted", Wanted) ?? Rows.Each("consignment lines", Lines, l => l.Wrong())
        ?? (Lines.IsEmpty ? Refusal.Of("consignment lines", null, "list at least one thing that went into the box") : null)
        ?? Lines.GroupBy(l => l.Number).Where(g => g.Count() > 1).Select(g => Refusal.Of("consignment line", $"{g.Key}", "each line has a number of its own")).FirstOrDefault();
}

/// <param name="Number">From 1, fixed once given: returns refer to it.</param>
/// <param name="PartId">Null for things that stand in no tree.</param>
/// <param name="Count">How many went into the box.</param>
/// <param name="Finish">"bright zinc, 8 micrometre, blue passivate".</param>
/// <param name="Masking">What must stay bare: threads, bores, earth points.</param>
public sealed record ConsignmentLine(int Number, Guid? PartId, string What, int Count, string Finish, string Masking, ImmutableArray<string> Pictures)
{
    public Refusal? Wrong() =>
        Rows.Counted("consignment line's number", Number, 1) ?? Check.Named($"what line {Number} holds", What)
        ?? Rows.Counted($"count of line {Number}", Count, 1) ?? Check.Short($"finish of line {Number}", Finish)
        ?? Check.Short($"masking of line {Number}", Masking) ?? Rows.Photographed(Pictures);
}

/// <summary>Some of a consignment line came back.</summary>
/// <param name="Damage">What is wrong with them; empty when nothing is.</param>
public sealed record ConsignmentReturn(
    Guid Id, Guid VehicleId, Guid ConsignmentId, int Line, int Count, string Damage, ImmutableArray<string> Pictures, DateTimeOffset At, string Device) : IFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("consignment", ConsignmentId) ?? Rows.Counted("consignment line's number", Line, 1)
        ?? Rows.Counted("count that came back", Count, 1) ?? Check.Short("damage", Damage) ?? Rows.Photographed(Pictures);
}
