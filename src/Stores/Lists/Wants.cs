using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores;

/// <summary>Which parts are wanted.</summary>
public static class Wants
{
    /// <summary>
    /// The parts to be bought, new or second-hand, and the undecided ones that are missing: counted as not here, or with
    /// "missing" as the first word of their condition. In the order of the parts.
    /// </summary>
    /// <exception cref="RefusedException">A missing count outside 1 to the quantity of its part, or a contact that is too long.</exception>
    public static WantsList Of(Vehicle vehicle, IEnumerable<Part> parts, WantsChoice choice)
    {
        if (choice.Contact.Length > Check.LongestText)
            throw new RefusedException(Refusal.Of("contact", choice.Contact, $"at most {Check.LongestText} characters are printed"));
        return new(For(vehicle), choice.Contact, choice.On, [.. parts.Select(p => Of(p, choice)).OfType<Want>()]);
    }

    static Want? Of(Part part, WantsChoice choice)
    {
        WantedAs? wanted = part.Route?.Route switch
        {
            Route.BuyNew => WantedAs.New,
            Route.BuySecondHand => WantedAs.SecondHand,
            null when choice.Missing.ContainsKey(part.Id) || SaidMissing(part.Condition) => WantedAs.Any,
            _ => null,
        };
        return wanted is not { } kind ? null : new(part.Id, part.Name, part.Hand, Quantity(part, choice), part.Reference, kind,
            choice.MadeTo.GetValueOrDefault(part.Id, ""), choice.Conditions ? part.Condition : "");
    }

    /// <summary>Only the missing ones of an undecided part are wanted; a part to be bought is bought whole.</summary>
    static int Quantity(Part part, WantsChoice choice)
    {
        if (part.Route is not null || !choice.Missing.TryGetValue(part.Id, out var missing)) return part.Quantity;
        return missing >= 1 && missing <= part.Quantity ? missing
            : throw new RefusedException(Refusal.Of($"missing of {part.Name}", $"{missing}", $"give 1 to {part.Quantity}"));
    }

    static bool SaidMissing(string condition) =>
        Words.Of(condition) is [{ Term: "missing" }, ..];

    static string For(Vehicle vehicle) =>
        string.Join(' ', new[] { vehicle.Maker, vehicle.Model, vehicle.Year is { } year ? $"({year})" : "" }.Where(s => s.Length > 0));
}
