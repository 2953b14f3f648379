using System.Collections.Immutable;
using WitnessMark.Stores.Orders;
using WitnessMark.Stores.Outwork;

namespace WitnessMark.Web.Client.Shell.Finding;

/// <summary>Firms, orders and boxes sent out, as they may be found.</summary>
sealed record Dealings(Guid Vehicle, ImmutableArray<Firm> Firms, ImmutableArray<Order> Orders, ImmutableArray<Consignment> Boxes)
{
    public IEnumerable<Findable> All() =>
    [
        .. Firms.Select(f => new Findable("Firms", f.Name, f.Does, $"{f.Contact} {f.Notes}", $"vehicle/{Vehicle}/orders")),
        .. Orders.Select(o => new Findable("Orders", Things.Joined(o.Lines.Select(l => l.What)), $"{Firm(o.FirmId)}, {o.Placed:yyyy-MM-dd}", o.Notes, $"vehicle/{Vehicle}/orders")),
        .. Boxes.Select(b => new Findable("Outwork", Things.Joined(b.Lines.Select(l => l.What)), $"{Firm(b.FirmId)}, out {b.Out:yyyy-MM-dd}", b.Wanted, $"vehicle/{Vehicle}/outwork")),
    ];

    string Firm(Guid id) => Firms.FirstOrDefault(f => f.Id == id)?.Name ?? "a firm";
}
