using WitnessMark.Stores;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>What a page does with the host's replies.</summary>
public static class Replies
{
    /// <summary>Why a saving was not done, for the person; null when it was.</summary>
    public static string? Why<T>(this Reply<Saved<T>> reply) => reply switch
    {
        { Away: true } => "The host does not answer; nothing was saved. Try again when it is back.",
        { Refusal: { } refusal } => refusal,
        { Value: { Clash: true } saved } => saved.Words,
        _ => null,
    };

    /// <summary>Why a fact was not kept, for the person; null when it was.</summary>
    public static string? Why(this Reply<Recorded> reply) =>
        reply.Away ? "The host does not answer; nothing was kept. Try again when it is back." : reply.Refusal;
}
