using WitnessMark.Maths;

namespace WitnessMark.Stores.Tags;

/// <summary>Which code opens what.</summary>
public static class TagBook
{
    /// <summary>What a scanned or typed code opens.</summary>
    /// <param name="standing">In the order they arrived.</param>
    public static Parsed<TagCode> Find(string text, IEnumerable<TagCode> standing)
    {
        var code = TagSpelling.Read(text);
        if (!code.Ok) return code.Refusal!;
        var found = standing.Where(t => t.Code == code.Value).DistinctBy(t => (t.Kind, t.Subject)).ToList();
        return found switch
        {
            [] => Refusal.Of("tag code", text, "no tag of this vehicle bears it"),
            [var one] => one,
            _ => Refusal.Of("tag code", text, $"two tags bear it ({found[0].Words}; {found[1].Words}): take one back and print it anew"),
        };
    }

    /// <summary>A tag for the thing: the one it has, or a new one whose code no other thing bears. It follows from the thing, so two phones give the same.</summary>
    /// <param name="wanted">Its code is not looked at.</param>
    public static TagCode For(TagCode wanted, IReadOnlyCollection<TagCode> standing)
    {
        if (standing.LastOrDefault(t => t.Kind == wanted.Kind && t.Subject == wanted.Subject) is { } has) return has;
        var taken = standing.Select(t => t.Code).ToHashSet();
        for (var attempt = 0; ; attempt++)
            if (TagSpelling.Of(NamedId.Of(wanted.Subject, wanted.Kind.ToString()), attempt) is var code && !taken.Contains(code)) return wanted with { Code = code };
    }
}
