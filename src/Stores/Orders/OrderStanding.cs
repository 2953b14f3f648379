using System.Collections.Immutable;

namespace WitnessMark.Stores.Orders;

public enum OrderState { Waiting, PartHere, AllHere, CalledOff }

/// <param name="Came">Delivered so far; may exceed what was ordered.</param>
public sealed record LineStanding(OrderLine Line, int Came)
{
    public int Outstanding => Math.Max(0, Line.Quantity - Came);

    public int Over => Math.Max(0, Came - Line.Quantity);
}

/// <summary>How an order stands by the deliveries.</summary>
/// <param name="DaysLate">0 unless something is outstanding past its expected date.</param>
/// <param name="Strays">Deliveries that name a line the order does not have.</param>
public sealed record OrderStanding(Order Order, OrderState State, int DaysLate, ImmutableArray<LineStanding> Lines, ImmutableArray<Delivery> Strays)
{
    public static OrderStanding Of(Order order, IEnumerable<Delivery> standing, DateOnly today)
    {
        var ours = standing.Where(d => d.OrderId == order.Id).ToLookup(d => d.Line);
        ImmutableArray<LineStanding> lines = [.. order.Lines.Select(l => new LineStanding(l, ours[l.Number].Sum(d => d.Quantity)))];
        var state = order.CalledOff is not null ? OrderState.CalledOff
            : lines.All(l => l.Outstanding == 0) ? OrderState.AllHere
            : lines.Any(l => l.Came > 0) ? OrderState.PartHere : OrderState.Waiting;
        var late = state is OrderState.Waiting or OrderState.PartHere && order.Expected is { } e ? Math.Max(0, today.DayNumber - e.DayNumber) : 0;
        var numbers = order.Lines.Select(l => l.Number).ToHashSet();
        return new(order, state, late, lines, [.. ours.Where(g => !numbers.Contains(g.Key)).SelectMany(g => g)]);
    }

    /// <summary>One sentence: how far it is and what is still to come.</summary>
    public string Words
    {
        get
        {
            var owing = string.Join(", ", Lines.Where(l => l.Outstanding > 0).Select(l => $"{l.Outstanding} of {l.Line.Quantity} {l.Line.What}"));
            var over = string.Join(", ", Lines.Where(l => l.Over > 0).Select(l => $"{l.Over} {l.Line.What} too many"));
            var late = DaysLate > 0 ? $"; {DaysLate} {(DaysLate == 1 ? "day" : "days")} late (expected {Order.Expected:yyyy-MM-dd})" : "";
            var state = State switch
            {
                OrderState.Waiting => $"Nothing has come yet: {owing}{late}",
                OrderState.PartHere => $"Part is here, still to come: {owing}{late}",
                OrderState.CalledOff => $"Called off on {Order.CalledOff:yyyy-MM-dd}",
                _ => "All is here",
            };
            var strays = Strays.IsEmpty ? "" : $"; a delivery names line {Strays[0].Line}, which this order does not have";
            return $"{state}{(over.Length > 0 ? $"; {over}" : "")}{strays}.";
        }
    }
}
