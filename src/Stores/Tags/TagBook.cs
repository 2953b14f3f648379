using WitnessMark.Maths;

namespace WitnessMark.Stores.Tags;

/// <summary>Which code opens what. It grows by the tags it gives out; nobody else sees it.</summary>
public sealed class TagBook
{
    readonly Dictionary<(TagKind, Guid), TagCode> _tags = [];
    readonly HashSet<string> _taken = [];

    TagBook(IEnumerable<TagCode> standing)
    {
        foreach (var tag in standing) Add(tag);
    }

    /// <param name="standing">In the order they arrived.</param>
    public static TagBook Open(IEnumerable<TagCode> standing) => new(standing);

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
    public TagCode For(TagCode wanted)
    {
        if (_tags.TryGetValue((wanted.Kind, wanted.Subject), out var has)) return has;
        for (var attempt = 0; ; attempt++)
            if (TagSpelling.Of(NamedId.Of(wanted.Subject, wanted.Kind.ToString()), attempt) is var code && !_taken.Contains(code)) return Add(wanted with { Code = code });
    }

    TagCode Add(TagCode tag)
    {
        _taken.Add(tag.Code);
        return _tags[(tag.Kind, tag.Subject)] = tag;
    }
}
