using WitnessMark.Stores.Tags;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Tags;

[Truth(Grade.Property, "a code opens one thing; a thing keeps its code; a code on two things is told")]
public class TagBookTests
{
    static readonly Guid Van = Guid.NewGuid();

    static TagCode Wanted(TagKind kind, Guid subject, string words = "hinge") => new(Guid.NewGuid(), Van, "", kind, subject, words, new(2031, 5, 1, 0, 0, 0, TimeSpan.Zero), "phone");

    [Fact]
    public void Two_phones_give_a_thing_the_same_code()
    {
        var part = Guid.NewGuid();
        var (one, other) = (TagBook.Open([]).For(Wanted(TagKind.Part, part)), TagBook.Open([]).For(Wanted(TagKind.Part, part)));
        Assert.Equal(one.Code, other.Code);
        Assert.Null(one.Wrong());
        // Both were kept: it is still the tag of one thing.
        Assert.True(TagBook.Find($"wm:{TagSpelling.Printed(one.Code).ToLowerInvariant()}", [one, other]).Ok);
        Assert.Equal(one, TagBook.Open([one]).For(Wanted(TagKind.Part, part, "renamed")));
    }

    [Fact]
    public void A_taken_code_is_not_given_again()
    {
        var (part, bag) = (Guid.NewGuid(), Guid.NewGuid());
        var first = TagBook.Open([]).For(Wanted(TagKind.Part, part));
        var squatter = Wanted(TagKind.Bag, bag) with { Code = first.Code };
        Assert.NotEqual(first.Code, TagBook.Open([squatter]).For(Wanted(TagKind.Part, part)).Code);
        Assert.NotEqual(first.Code, TagBook.Open([first]).For(Wanted(TagKind.Bag, part)).Code);
        Assert.Contains("two tags bear it", TagBook.Find(first.Code, [first, squatter]).Refusal!.Sentence);
    }

    [Fact]
    public void An_unknown_or_wrong_code_is_told()
    {
        var code = TagSpelling.Of(Guid.NewGuid());
        Assert.Contains("no tag of this vehicle", TagBook.Find(code, []).Refusal!.Sentence);
        Assert.False(TagBook.Find("nonsense", []).Ok);
        Assert.Contains("thing tagged", (Wanted(TagKind.Part, Guid.Empty) with { Code = code }).Wrong()!.Sentence);
    }
}
