using System.Collections.Immutable;

namespace WitnessMark.Stores.ComingApart;

/// <summary>Fasteners of a part that are not as many as they should be.</summary>
/// <param name="Lacking">How many are not here; negative when there are too many.</param>
public sealed record Shortfall(Guid PartId, FastenerCount Fastener, int Lacking, string Words)
{
    /// <summary>Those of all parts, most lacking first.</summary>
    public static ImmutableArray<Shortfall> Of(IEnumerable<OffPart> off, Func<Guid, string> nameOf) =>
        [.. off.SelectMany(o => o.Fasteners.Where(f => f.Here != f.Wanted)
                .Select(f => new Shortfall(o.PartId, f, f.Wanted - f.Here, Sentence(f, nameOf(o.PartId)))))
            .OrderByDescending(s => s.Lacking).ThenBy(s => s.Words, StringComparer.Ordinal)];

    static string Sentence(FastenerCount f, string part)
    {
        var (one, many) = (Counting.Sized(f.What, f.Thread), Counting.Sized(Counting.Plural(f.What), f.Thread));
        return (f.Wanted - f.Here) switch
        {
            < 0 => $"{Counting.Words(f.Here)} {many} lie in the bag of the {part}, where {Counting.Words(f.Wanted)} belong",
            _ when f.Wanted == 1 => $"the {one} of the {part} is not here",
            _ when f.Wanted == 2 && f.Here == 0 => $"both {many} of the {part} are not here",
            _ when f.Here == 0 => $"none of the {Counting.Words(f.Wanted)} {many} of the {part} is here",
            1 => $"one of the {Counting.Words(f.Wanted)} {many} of the {part} is not here",
            var n => $"{Counting.Words(n)} of the {Counting.Words(f.Wanted)} {many} of the {part} are not here",
        };
    }
}

/// <summary>Counts and things in English.</summary>
static class Counting
{
    static readonly string[] Small = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    public static string Words(int count) => count >= 0 && count < Small.Length ? Small[count] : $"{count}";

    /// <summary>By the common rule: -s; -es after s, x, z, ch, sh; -ies for a consonant and y. Words that are plural already stay.</summary>
    public static string Plural(string thing) => thing switch
    {
        _ when Ends(thing, "s", "x", "z", "ch", "sh") => Ends(thing, "bolts", "nuts", "screws", "pins", "clips", "washers", "studs", "rivets") ? thing : thing + "es",
        [.., not ('a' or 'e' or 'i' or 'o' or 'u'), 'y'] => thing[..^1] + "ies",
        _ => thing + "s",
    };

    public static string Sized(string thing, string thread) => thread.Trim().Length > 0 ? $"{thing} {thread.Trim()}" : thing;

    static bool Ends(string thing, params ReadOnlySpan<string> ends)
    {
        foreach (var end in ends)
            if (thing.EndsWith(end, StringComparison.OrdinalIgnoreCase)) return true;
        return false;
    }
}
