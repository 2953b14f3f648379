using WitnessMark.Maths;
using WitnessMark.Stores.Photographs;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

public class PictureTests : RoomFile
{
    /// <summary>One grey pixel (PNG, W3C).</summary>
    static readonly byte[] Png = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==");

    string Folder => RecordRoom.PicturesOf(PathOf("records.db"));

    PictureTaken Taken(int n, string words = "", Guid? part = null) =>
        new(new Guid(n, 7, 0, new byte[8]), Van.Id, part, new string('a', 64), words, Noon.AddDays(-n), "phone");

    [Fact]
    [Truth(Grade.Property, "what comes as a stream is kept bit for bit under the SHA-256 of its bytes, and once")]
    public async Task A_stream_is_kept_under_its_content()
    {
        var pictures = (await Furnished()).Pictures;
        using var stream = new MemoryStream(Png);
        var id = await pictures.Keep(stream);
        Assert.Equal(id, await pictures.Keep(Png));
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Png)), id);
        await using var open = pictures.Open(id)!;
        using var read = new MemoryStream();
        await open.CopyToAsync(read);
        Assert.Equal(Png, read.ToArray());
        Assert.Equal([id], pictures.All());
    }

    [Fact]
    [Truth(Grade.Property, "a refused, broken or interrupted picture leaves no file")]
    public async Task What_is_refused_leaves_nothing()
    {
        var pictures = (await Furnished()).Pictures;
        (byte[] Bytes, string Words)[] bad =
        [
            (Png[..^5], "ends before the picture does"), ([], "nothing is given"), ("sample,H1"u8.ToArray(), "send a JPEG, PNG or WebP"),
            ([0, 0, 0, 24, .. "ftypheic"u8, .. new byte[12]], "choose JPEG"), ([0xFF, 0xD8, 0xFF, .. new byte[40_000_000]], "over 40 MB"),
        ];
        foreach (var (bytes, words) in bad)
            Assert.Contains(words, (await Assert.ThrowsAsync<RefusedException>(() => pictures.Keep(new MemoryStream(bytes)))).Message);
        await Assert.ThrowsAsync<IOException>(() => pictures.Keep(new Broken()));
        Assert.Empty(Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories));
    }

    [Fact]
    [Truth(Grade.Property, "a disk that cannot be written to is told in one sentence")]
    public async Task A_disk_that_takes_nothing_is_told()
    {
        var pictures = (await Furnished()).Pictures;
        // A file stands where the folder would be.
        await File.WriteAllTextAsync(Folder, "");
        Assert.Contains("make room on the disk", (await Assert.ThrowsAsync<RefusedException>(() => pictures.Keep(new MemoryStream(Png)))).Message);
    }

    [Fact]
    [Truth(Grade.Property, "the album is the standing facts: newest taken first, the last words said, without what was taken back")]
    public async Task The_album_is_what_the_facts_say()
    {
        var room = await Furnished();
        await room.Desk.PicturesTaken.Append([Taken(3, "wing off"), Taken(1, "stay"), Taken(2, "plate", Bracket.Id)]);
        Assert.Equal(["stay", "plate", "wing off"], (await room.Albums.Of(Van.Id)).Find(new()).Rows.Select(r => r.Words));
        await room.Desk.PicturesSaid.Append([new(Guid.NewGuid(), Van.Id, Taken(1).Id, Bracket.Id, "stay, rear", Noon, "page")]);
        var (album, said) = (await room.Albums.Of(Van.Id), (await room.Albums.Of(Van.Id)).One(Taken(1).Id)!);
        Assert.Equal(("stay, rear", Bracket.Id), (said.Row.Words, said.Row.PartId));
        Assert.Equal("stay", Assert.Single(said.Said).Words);
        Assert.Equal(((Guid?)null, Taken(2).Id), (said.Newer, said.Older));
        Assert.Equal(2, album.Find(new(PartId: Bracket.Id)).Count);
        Assert.Equal("wing off", Assert.Single(album.Find(new(NoPart: true)).Rows).Words);
        Assert.Equal("stay, rear", Assert.Single(album.Find(new(Words: "REAR stay")).Rows).Words);
        await room.Desk.TakenBack.Append([new(Guid.NewGuid(), Van.Id, Taken(2).Id, "blurred", Noon, "page")]);
        Assert.Null((await room.Albums.Of(Van.Id)).One(Taken(2).Id));
    }

    [Fact]
    [Truth(Grade.Property, "twenty thousand pictures read stretch by stretch give each of them once, in order")]
    public async Task Twenty_thousand_are_read_by_stretches()
    {
        var room = await Furnished();
        for (var n = 0; n < 20_000; n += 5000)
            await room.Desk.PicturesTaken.Append([.. Enumerable.Range(n + 1, 5000).Select(i => Taken(i, $"picture {i}", i % 3 == 0 ? Bracket.Id : null))]);
        var album = await room.Albums.Of(Van.Id);
        var seen = new List<PictureTaken>();
        while (album.Find(new(Skip: seen.Count, Take: 500)) is { Rows.IsEmpty: false } next) seen.AddRange(next.Rows);
        Assert.Equal(20_000, seen.DistinctBy(r => r.Id).Count());
        Assert.Equal(seen.OrderByDescending(r => r.At), seen);
        var month = album.Find(new(Month: "2010-03"));
        Assert.Equal("2010-03", PictureAlbum.MonthOf(month.Rows[0]));
        Assert.NotEqual("2010-03", PictureAlbum.MonthOf(album.Find(new(Skip: month.Skip - 1, Take: 1)).Rows[0]));
        Assert.Equal(20_000, month.Months.Sum(m => m.Count));
        // Held until a fact arrives.
        Assert.Same(album, await room.Albums.Of(Van.Id));
    }

    /// <summary>A line that breaks after the first bytes.</summary>
    sealed class Broken : MemoryStream
    {
        int _times;

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            if (_times++ > 0) throw new IOException("the line broke");
            Png.AsMemory(0, 30).CopyTo(buffer);
            return ValueTask.FromResult(30);
        }
    }
}
