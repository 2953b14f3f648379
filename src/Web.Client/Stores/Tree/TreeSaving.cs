using WitnessMark.Stores;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Client.Stores;

/// <summary>Makes a set of changes to the tree: with the host all at once; while it is away, or while one of the rows waits here, by way of the tray.</summary>
public static class TreeSaving
{
    /// <summary>Why it was not done, for the person; null when it was.</summary>
    public static async Task<string?> Apply(Server server, Tray tray, TreeChanges changes)
    {
        var waiting = Touched(changes).Any(tray.IsWaiting);
        if (!waiting)
        {
            var reply = await server.Apply(changes);
            if (!reply.Away) return reply.Refusal ?? (reply.Value is { Done: false } applied ? applied.Words : null);
        }
        // A row that is taken off may carry others that only the host knows of.
        if (changes.Systems.Any(c => c.After is null) || changes.Assemblies.Any(c => c.After is null) || changes.Parts.Any(c => c.After is null))
            return waiting ? "Some of it still waits to be sent; take it off when the host has it." : "Only the host can take rows off, and it does not answer; nothing was changed. Try again when it is back.";
        return await tray.Save(changes);
    }

    /// <summary>Every row that is changed, and the vehicle that they hang on.</summary>
    static IEnumerable<string> Touched(TreeChanges changes) =>
    [
        Addresses.Vehicle(changes.VehicleId), .. changes.Systems.Select(c => Addresses.System(c.Row.Id)), .. changes.Assemblies.Select(c => Addresses.Assembly(c.Row.Id)),
        .. changes.Parts.SelectMany(c => new[] { Addresses.Part(c.Row.Id), Addresses.System(c.Row.SystemId) }),
        .. changes.Parts.Where(c => c.Row.AssemblyId is not null).Select(c => Addresses.Assembly(c.Row.AssemblyId!.Value)),
    ];
}
