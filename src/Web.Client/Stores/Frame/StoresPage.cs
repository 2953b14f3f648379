using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Shell.Works;

namespace WitnessMark.Web.Client.Stores;

/// <summary>What every page about one vehicle's stores has: the tree, the desk, and a way to keep what is typed.</summary>
public abstract class StoresPage : ComponentBase
{
    [Parameter] public Guid VehicleId { get; set; }
    [Inject] protected Server Server { get; set; } = default!;
    [Inject] protected DeskServer Desk { get; set; } = default!;
    [Inject] protected Tray Tray { get; set; } = default!;
    [Inject] ThisDevice Here { get; set; } = default!;
    [Inject] protected TimeProvider Clock { get; set; } = default!;
    [Inject] protected NavigationManager Navigation { get; set; } = default!;
    [Inject] protected LastDeed Deed { get; set; } = default!;

    /// <summary>Null until it is fetched.</summary>
    protected VehicleTree? Tree { get; private set; }

    /// <summary>Why the page cannot be shown.</summary>
    protected string? Why { get; set; }

    Dictionary<Guid, string> _names = [];

    /// <summary>Decisions as the page last fetched them, so that one that is saved anew can be put back.</summary>
    readonly Dictionary<Guid, IDecision> _former = [];

    protected DateTimeOffset Now => Clock.GetLocalNow();

    protected DateOnly Today => DateOnly.FromDateTime(Now.Date);

    /// <summary>What is written into facts made here.</summary>
    protected string Device => Here.Name;

    protected override Task OnParametersSetAsync() => Again();

    /// <summary>Asks the host for everything the page shows.</summary>
    protected async Task Again()
    {
        var reply = await Server.Patient(() => Server.Tree(VehicleId));
        if (reply.Value is not { } tree)
        {
            Why = reply.Refusal;
            return;
        }
        _names = tree.Parts.ToDictionary(p => p.Row.Id, p => PartWording.Full(p.Row));
        await Fetch(tree);
        Tree = tree;
        StateHasChanged();
    }

    /// <summary>The rest that the page shows, before it is drawn.</summary>
    protected virtual Task Fetch(VehicleTree tree) => Task.CompletedTask;

    protected string NameOf(Guid part) => _names.GetValueOrDefault(part, "a part that is no longer listed");

    protected async Task<ImmutableArray<T>> Facts<T>() where T : class, IFact =>
        (await Server.Patient(() => Desk.Facts<T>(VehicleId))).Value is { IsDefault: false } facts ? facts : [];

    protected async Task<ImmutableArray<Versioned<T>>> Decisions<T>() where T : class, IDecision
    {
        if ((await Server.Patient(() => Desk.Decisions<T>(VehicleId))).Value is not { IsDefault: false } rows) return [];
        foreach (var row in rows) _former[row.Row.Id] = row.Row;
        return rows;
    }

    /// <summary>Appends what was seen; answers why not, or null when it is kept and the page is fetched anew.</summary>
    protected async Task<string?> Append<T>(T fact) where T : class, IFact
    {
        var why = await Kept(() => Tray.Append(fact));
        if (why is null && fact is not TakenBack) Deed.Did($"Written down: {Deeds.Name<T>()}.", () => TakeBack(fact.Id, "taken back at once"));
        return why;
    }

    /// <summary>Saves a decision; answers why not, or null when it is kept and the page is fetched anew.</summary>
    protected async Task<string?> Save<T>(T row, int basedOn = 0) where T : class, IDecision
    {
        var former = basedOn > 0 ? _former.GetValueOrDefault(row.Id) as T : null;
        var why = await Kept(() => Tray.Save(row, basedOn));
        if (why is null && former is not null) Deed.Did($"Saved: {Deeds.Name<T>()}.", () => Save(former, basedOn + 1));
        return why;
    }

    /// <summary>Takes a fact back.</summary>
    protected Task<string?> TakeBack(Guid fact, string reason) => Append(new TakenBack(Tray.NewId(), VehicleId, fact, reason, Now, Device));

    async Task<string?> Kept(Func<Task<string?>> keep)
    {
        if (await keep() is { } why) return why;
        await Again();
        return null;
    }
}
