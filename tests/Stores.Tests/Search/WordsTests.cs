using CsCheck;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Search;

public sealed class WordsTests
{
    [Theory]
    [InlineData("Bolt, 3/8\" BSF", "bolt 3/8 bsf")]
    [InlineData("M8×1.25", "m8x1.25")]
    [InlineData("3⅜ in", "3 3/8 in")]
    [InlineData("L.H. and N/S", "lh and ns")]
    [InlineData("Q12-1041", "q12 1041")]
    [InlineData("nut/washer.", "nut washer")]
    [InlineData(" - ", "")]
    [Truth(Grade.CommonPractice, "sizes and sides as parts lists write them")]
    public void Text_splits_into_words(string text, string words) => Assert.Equal(words, string.Join(' ', Words.Of(text).Select(w => w.Term)));

    [Theory]
    [InlineData("\u00E9", "e\u0301")]
    [InlineData("\u00F6", "o\u0308")]
    [InlineData("\u00E7", "c\u0327")]
    [InlineData("\u010D", "c\u030C")]
    [InlineData("\u015E", "S\u0327")]
    [InlineData("\u017E", "z\u030C")]
    [InlineData("\u016E", "U\u030A")]
    [Truth(Grade.Published, "UnicodeData.txt: canonical decompositions of these letters")]
    public void An_accent_makes_no_difference(string one, string two)
    {
        Assert.Equal(Words.Of($"a{one}b")[0].Term, Words.Of($"a{two}b")[0].Term);
        Assert.All(Words.Of($"a{one}b")[0].Term, c => Assert.InRange(c, 'a', 'z'));
    }

    [Fact]
    [Truth(Grade.Property, "a word stands where it says")]
    public void A_word_stands_where_it_says() =>
        Gen.String[Gen.Char["aB1/.\" -½é\u0301×"], 0, 20].Sample(text =>
        {
            foreach (var word in Words.Of(text))
                Assert.Equal(word.Term, string.Concat(Words.Of(text.Substring(word.Start, word.Length)).Select(w => w.Term)));
        }, iter: 5000);
}
