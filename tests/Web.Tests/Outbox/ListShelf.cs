using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Tests.Outbox;

/// <summary>The shelf of one device, in memory. It outlives the page, as a browser's database does, and can be made full.</summary>
sealed class ListShelf : IShelf
{
    readonly Dictionary<string, byte[]> _bytes = [];

    public Lying Lies { get; private set; } = Lying.Nothing;

    public bool Full { get; set; }

    public Task<Lying> Read(bool withSent) => Task.FromResult(Lies);

    public async Task Change(Shift shift)
    {
        await Task.Yield();
        if (Full && shift.Entries.Length + shift.Decisions.Length + shift.Sent.Length > 0) throw new NotKeptException("There is no room.");
        Lies = Lies.After(shift);
    }

    public async Task<UnsentPicture> KeepPicture(byte[] bytes, string type)
    {
        await Task.Yield();
        if (Full) throw new NotKeptException("There is no room.");
        var picture = new UnsentPicture(PictureKind.Id(bytes), bytes.Length, type, default, null);
        _bytes[picture.Id] = bytes;
        Lies = Lies with { Pictures = Lies.Pictures.SetItem(picture.Id, picture) };
        return picture;
    }

    public Task<byte[]> Picture(string id) => Task.FromResult(_bytes[id]);

    public Task PictureSent(string id)
    {
        Lies = Lies with { Pictures = Lies.Pictures.Remove(id) };
        return Task.CompletedTask;
    }

    public Task RefusePicture(string id, string refusal)
    {
        Lies = Lies with { Pictures = Lies.Pictures.SetItem(id, Lies.Pictures[id] with { Refusal = refusal }) };
        return Task.CompletedTask;
    }

    public Task<bool> Turn() => Task.FromResult(true);

    public void EndTurn() { }
}
