using System.Collections.Immutable;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Notes;
using WitnessMark.Stores.Orders;
using WitnessMark.Stores.Outwork;
using WitnessMark.Stores.Places;
using WitnessMark.Stores.Tags;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Shell.Ways;

namespace WitnessMark.Web.Client.Shell.Finding;

/// <summary>Fetches what can be found. What the host does not answer for is searched as it was last fetched.</summary>
public sealed class Stock(Server server, DeskServer desk, Whereabouts where)
{
    ImmutableArray<Findable> _last = [];
    Guid? _vehicle;

    /// <summary>Ready at once: pages and commands, and of this vehicle what was fetched before.</summary>
    public FindIndex Index { get; private set; } = FindIndex.Of(Pages.All(null));

    public async Task Fetch()
    {
        var vehicle = where.Vehicle;
        if (vehicle != _vehicle) _last = [];
        _vehicle = vehicle;
        var fetched = vehicle is { } id ? await OfVehicle(id) : null;
        if (fetched is { } things) _last = things;
        Index = FindIndex.Of([.. Pages.All(vehicle), .. _last]);
    }

    /// <summary>Null while the host is away and nothing is kept of the vehicle here.</summary>
    async Task<ImmutableArray<Findable>?> OfVehicle(Guid id)
    {
        // Asked for all at once: the search waits for the slowest and not for the sum.
        var (trees, works) = (server.Tree(id), server.Jobs(id));
        var (notes, tags, moves) = (desk.Facts<Note>(id), desk.Facts<TagCode>(id), desk.Facts<Moved>(id));
        var (firms, orders, boxes, places) = (desk.Decisions<Firm>(id), desk.Decisions<Order>(id), desk.Decisions<Consignment>(id), desk.Decisions<Place>(id));
        if ((await trees).Value is not { } tree) return null;
        var put = Rows(await places);
        var at = new WhereIs(put, Facts(await moves));
        var codes = Facts(await tags);
        var dealings = new Dealings(id, Rows(await firms), Rows(await orders), Rows(await boxes));
        return
        [
            .. Things.Parts(tree, codes, at), .. Things.Samples(tree), .. Things.Jobs((await works).Value is { IsDefault: false } j ? j.Select(r => r.Row) : []),
            .. Things.Notes(id, tree, Facts(await notes)), .. dealings.All(), .. Things.Places(id, put, at), .. Things.Tags(id, codes),
        ];
    }

    static ImmutableArray<T> Rows<T>(Reply<ImmutableArray<Versioned<T>>> reply) => reply.Value is { IsDefault: false } rows ? [.. rows.Select(r => r.Row)] : [];

    static ImmutableArray<T> Facts<T>(Reply<ImmutableArray<T>> reply) where T : IFact => reply.Value is { IsDefault: false } facts ? facts : [];
}
