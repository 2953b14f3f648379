using System.Collections.Immutable;

namespace WitnessMark.Stores;

/// <summary>How a wanted part may come.</summary>
public enum WantedAs { New, SecondHand, Any }

/// <summary>One line of a wants list: only what a stranger needs to recognise the part.</summary>
/// <param name="MadeTo">The sizes it was made to, in words; empty where not known.</param>
/// <param name="Condition">Of the part at hand; empty unless the person chose to show conditions.</param>
public sealed record Want(Guid PartId, string What, Hand Hand, int Quantity, string Reference, WantedAs As, string MadeTo, string Condition);

/// <summary>
/// What is looked for, to hand to strangers. It can carry no name of the vehicle, lender, price, reason, place or note: it has no field for them.
/// </summary>
/// <param name="For">Maker, model and year of the vehicle.</param>
/// <param name="Contact">How to answer, as typed for this list; may be empty.</param>
public sealed record WantsList(string For, string Contact, DateOnly On, ImmutableArray<Want> Wants);

/// <summary>What the person chose for one wants list.</summary>
public sealed record WantsChoice(DateOnly On)
{
    public string Contact { get; init; } = "";

    /// <summary>Show the condition of the parts at hand, in the person's own words.</summary>
    public bool Conditions { get; init; }

    /// <summary>How many of a part are not here, at least 1, as counted when it came apart.</summary>
    public ImmutableDictionary<Guid, int> Missing { get; init; } = ImmutableDictionary<Guid, int>.Empty;

    /// <summary>The sizes a part was made to, in words.</summary>
    public ImmutableDictionary<Guid, string> MadeTo { get; init; } = ImmutableDictionary<Guid, string>.Empty;
}
