using CsCheck;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Search;

public sealed class SpellingTests
{
    [Theory]
    [InlineData("ca", "abc", 3)]
    [Truth(Grade.Published, "RapidFuzz documentation, OSA.distance: CA to ABC is 3 under the restriction that no letter is touched twice (2 without it)")]
    public void No_letter_is_touched_twice(string a, string b, int slips) => Assert.Equal(slips, Spelling.Distance(a, b, 9));

    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("abcdef", "abdcef", 1)]
    [InlineData("abcdef", "bacdfe", 2)]
    [InlineData("abcdef", "abcde", 1)]
    [InlineData("abcdef", "poiu", 6)]
    [InlineData("", "", 0)]
    [InlineData("", "abc", 3)]
    [Truth(Grade.Published, "string-similarity documentation, Damerau-Levenshtein: the first three examples for abcdef; kitten to sitting is the textbook pair")]
    [Truth(Grade.Property, "an empty word is as far as the other is long; words without a common letter are as far as the longer one is")]
    public void The_four_slips_count_one_each(string a, string b, int slips) => Assert.Equal(slips, Spelling.Distance(a, b, 9));

    [Fact]
    [Truth(Grade.SecondImplementation, "the whole table of the recurrence, kept beside this test, without bands or early ends")]
    public void Stopping_early_changes_nothing() =>
        Gen.Select(Gen.String[Gen.Char["abcd"], 0, 9], Gen.String[Gen.Char["abcd"], 0, 9], Gen.Int[0, 4]).Sample((a, b, most) =>
        {
            Assert.Equal(Math.Min(Whole(a, b), most + 1), Spelling.Distance(a, b, most));
            if (Whole(a, b) <= most) Assert.True(Spelling.MayBeWithin(Spelling.Signs(a), Spelling.Signs(b), most));
        }, iter: 20_000);

    [Theory]
    [InlineData("bolts", "bolt")]
    [InlineData("assemblies", "assembly")]
    [InlineData("valves", "valve")]
    [InlineData("shoes", "shoes")]
    [InlineData("brass", "brass")]
    [InlineData("bus", "bus")]
    [InlineData("radius", "radius")]
    [Truth(Grade.FromMemory, "the three rules of D. Harman, How effective is suffixing? (1991), as they are commonly restated")]
    public void Plurals_are_read_as_one(string many, string one) => Assert.Equal(one, Spelling.Singular(many));

    [Fact]
    [Truth(Grade.Property, "a longer word than any is too far, not a fault")]
    public void A_word_too_long_is_too_far() => Assert.Equal(3, Spelling.Distance(new string('a', 60), new string('a', 60), 2));

    static int Whole(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
            for (var j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0) { d[i, j] = i + j; continue; }
                d[i, j] = new[] { d[i - 1, j] + 1, d[i, j - 1] + 1, d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1) }.Min();
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        return d[a.Length, b.Length];
    }
}
