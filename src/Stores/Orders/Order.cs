using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Orders;

/// <summary>What was ordered from a firm. How it stands follows from the deliveries.</summary>
/// <param name="Expected">Null when the firm has not said.</param>
/// <param name="CalledOff">Null while it stands.</param>
public sealed record Order(
    Guid Id, Guid VehicleId, Guid FirmId, DateOnly Placed, DateOnly? Expected, Payment? Deposit,
    ImmutableArray<OrderLine> Lines, DateOnly? CalledOff, string Notes) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("firm", FirmId) ?? Rows.Dated("day of the order", Placed)
        ?? (Expected is { } e ? Rows.Dated("expected date", e) ?? Rows.NotBefore("expected date", e, "the day of the order", Placed) : null)
        ?? (CalledOff is { } c ? Rows.NotBefore("day it was called off", c, "the day of the order", Placed) : null)
        ?? Deposit?.Wrong("deposit") ?? Rows.Each("order lines", Lines, l => l.Wrong())
        ?? (Lines.IsEmpty ? Refusal.Of("order lines", null, "an order needs at least one") : null)
        ?? Lines.GroupBy(l => l.Number).Where(g => g.Count() > 1).Select(g => Refusal.Of("order line", $"{g.Key}", "each line has a number of its own")).FirstOrDefault()
        ?? Check.Short("notes", Notes);
}

/// <param name="Number">From 1, fixed once given: deliveries refer to it.</param>
/// <param name="PartId">Null for material or small stuff.</param>
/// <param name="Each">Price of one.</param>
public sealed record OrderLine(int Number, Guid? PartId, string What, int Quantity, Money Each)
{
    public Money Price => Each with { Amount = Each.Amount * Quantity };

    public Refusal? Wrong() =>
        Rows.Counted("order line's number", Number, 1) ?? Check.Named($"what line {Number} orders", What)
        ?? Rows.Counted($"quantity of line {Number}", Quantity, 1) ?? Each.Wrong($"price of line {Number}");
}

/// <summary>Some of an order line came.</summary>
public sealed record Delivery(
    Guid Id, Guid VehicleId, Guid OrderId, int Line, int Quantity, string Note, ImmutableArray<string> Pictures, DateTimeOffset At, string Device) : IFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Pointed("order", OrderId) ?? Rows.Counted("order line's number", Line, 1)
        ?? Rows.Counted("quantity delivered", Quantity, 1) ?? Check.Short("note", Note) ?? Rows.Photographed(Pictures);
}
