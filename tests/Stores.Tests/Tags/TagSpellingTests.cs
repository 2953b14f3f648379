using CsCheck;
using WitnessMark.Stores.Tags;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Tags;

public class TagSpellingTests
{
    [Fact]
    [Truth(Grade.FromMemory, "ISO/IEC 7064 MOD 37,36 as the Global Release Identifier uses it: its example A1-2425G-ABC1234002-M")]
    public void The_check_character_is_that_of_the_standard() => Assert.Equal('M', TagSpelling.Check("A12425GABC1234002"));

    [Fact]
    [Truth(Grade.Property, "a hybrid system of ISO/IEC 7064 finds every single substitution")]
    public void Any_one_wrong_character_is_found() => Gen.Select(Gen.Guid, Gen.Int[0, 7], Gen.Int[1, 31]).Sample((id, at, by) =>
    {
        const string digits = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
        var code = TagSpelling.Of(id);
        var wrong = code[..at] + digits[(digits.IndexOf(code[at]) + by) % 32] + code[(at + 1)..];
        Assert.Equal(code, TagSpelling.Read(TagSpelling.Printed(code)).Value);
        Assert.False(TagSpelling.Read(wrong).Ok);
    });

    [Fact]
    [Truth(Grade.Property, "scanned, typed or copied, it is the same code")]
    public void A_code_is_read_as_people_write_it()
    {
        var code = Enumerable.Range(0, 1000).Select(n => TagSpelling.Of(new(n, 0, 0, new byte[8]))).First(c => c.Contains('0') && c.Contains('1'));
        foreach (var text in new[] { code.ToLowerInvariant(), $"WM:{code}", $"https://10.0.0.5:5001/t/{code}", $" {code.Replace('0', 'o').Replace('1', 'l')} " })
            Assert.Equal(code, TagSpelling.Read(text).Value);
        Assert.Contains("8 letters", TagSpelling.Read("").Refusal!.Sentence);
    }
}
