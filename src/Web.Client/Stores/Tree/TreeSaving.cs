using WitnessMark.Stores;
using WitnessMark.Web.Client.Outbox;

namespace WitnessMark.Web.Client.Stores;

/// <summary>Sends a set of changes to the tree.</summary>
public static class TreeSaving
{
    /// <summary>Why it was not done, for the person; null when it was.</summary>
    public static async Task<string?> Apply(Server server, TreeChanges changes) => await server.Apply(changes) switch
    {
        { Away: true } => "The host does not answer; nothing was changed. Try again when it is back.",
        { Refusal: { } refusal } => refusal,
        { Value: { Done: false } applied } => applied.Words,
        _ => null,
    };
}
