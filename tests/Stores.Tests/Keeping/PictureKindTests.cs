using WitnessMark.Stores.Keeping;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Keeping;

public class PictureKindTests
{
    [Theory]
    [InlineData("FFD8FFE000104A464946", "image/jpeg"), InlineData("89504E470D0A1A0A0000000D49484452", "image/png"), InlineData("524946461A000000574542505650384C", "image/webp")]
    [Truth(Grade.Published, "the first bytes: JPEG SOI FF D8 and a marker (ISO/IEC 10918-1), PNG signature 137 80 78 71 13 10 26 10 (ISO/IEC 15948, 5.2), RIFF....WEBP (RFC 9649, 2.4)")]
    public void A_picture_is_known_by_its_first_bytes(string hex, string type) => Assert.Equal(type, PictureKind.Of(Convert.FromHexString(hex)).Value);

    [Theory]
    [InlineData("", "nothing is given"), InlineData("00000018667479706865696300000000", "choose JPEG"), InlineData("25504446", "a PDF"), InlineData("474946383961", "a GIF")]
    [InlineData("FFD8", "another kind"), InlineData("52494646", "another kind"), InlineData("524946461A00000041564920", "another kind"), InlineData("89504E47", "another kind")]
    [Truth(Grade.Property, "what is no such picture, or only the beginning of one, is refused in words")]
    public void Another_file_is_refused(string hex, string words) => Assert.Contains(words, PictureKind.Of(Convert.FromHexString(hex)).Refusal!.Sentence);

    [Fact]
    [Truth(Grade.Property, "40 MB and no byte more")]
    public void A_large_picture_is_refused()
    {
        var large = new byte[PictureKind.Largest + 1];
        new byte[] { 0xFF, 0xD8, 0xFF }.CopyTo(large, 0);
        Assert.True(PictureKind.Of(large.AsSpan()[..^1]).Ok);
        Assert.Contains("40 MB", PictureKind.Of(large).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Published, "FIPS 180-4 example: SHA-256 of \"abc\" is ba7816bf 8f01cfea 414140de 5dae2223 b00361a3 96177a9c b410ff61 f20015ad")]
    public void A_picture_is_kept_under_its_SHA_256()
    {
        var id = PictureKind.Id("abc"u8);
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", id);
        Assert.True(PictureKind.IsId(id));
        Assert.All(new[] { null, "", id.ToUpperInvariant(), id[1..], "../" + id[3..] }, bad => Assert.False(PictureKind.IsId(bad)));
    }
}
