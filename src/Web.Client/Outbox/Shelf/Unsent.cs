namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>An append-only entry made here that the host has not acknowledged.</summary>
/// <param name="Kind">The name of its record.</param>
/// <param name="Address">Where it is sent.</param>
/// <param name="Text">The row as it travels, JSON.</param>
/// <param name="Refusal">Why the host will not have it; null while it was not refused.</param>
public sealed record Unsent(Guid Id, string Kind, string Address, string Text, DateTimeOffset KeptAt, string? Refusal = null)
{
    /// <summary>Time-ordered ids: sorted keys keep the order of making.</summary>
    public string Key => Id.ToString("N");
}

/// <summary>A decision made here that the host does not have yet; one for each address, the newest.</summary>
/// <param name="Address">Where it is put; names the row.</param>
/// <param name="BasedOn">The version that the oldest waiting change of it was built on.</param>
public sealed record Unsaved(string Kind, string Address, string Text, int BasedOn, DateTimeOffset KeptAt)
{
    /// <summary>Most sendings remembered whose answer was lost.</summary>
    const int MostTried = 4;

    public string? Refusal { get; init; }

    /// <summary>What somebody else saved first, JSON; null when there is no clash.</summary>
    public string? Theirs { get; init; }

    public int TheirVersion { get; init; }

    /// <summary>Rows sent whose answer never came: one of them may be what the host has by now, and that is no clash.</summary>
    public IReadOnlyList<string> Tried { get; init; } = [];

    public Unsaved Trying() => this with { Tried = [.. Tried.Where(t => t != Text).Append(Text).TakeLast(MostTried)] };

    public bool NeedsYou => Refusal is not null || Theirs is not null;
}

/// <summary>What the host has acknowledged, remembered for a while: a copy of its answer kept from before does not have it yet.</summary>
/// <param name="Version">Of a decision, as it stands now; 0 for an entry.</param>
public sealed record Sent(string Kind, string Address, string Text, int Version, DateTimeOffset At, string Key);

/// <summary>Bytes of a picture that wait.</summary>
/// <param name="Id">The SHA-256 of the bytes.</param>
public sealed record UnsentPicture(string Id, long Size, string Type, DateTimeOffset At, string? Refusal);
