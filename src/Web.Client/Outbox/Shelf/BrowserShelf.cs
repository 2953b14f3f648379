using System.Text.Json;
using Microsoft.JSInterop;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>The browser's own database.</summary>
public sealed class BrowserShelf(IJSRuntime js) : IShelf
{
    IJSInProcessObjectReference? _module;

    IJSInProcessObjectReference Module => _module ?? throw new InvalidOperationException("Load the shelf first.");

    public async Task Load() => _module = await js.InvokeAsync<IJSInProcessObjectReference>("import", "./js/shelf.js");

    public void Listen<T>(DotNetObjectReference<T> tray) where T : class => Module.InvokeVoid("listen", tray);

    public async Task<Lying> Read(bool withSent)
    {
        var read = JsonSerializer.Deserialize(await Module.InvokeAsync<string>("read", withSent), ShelfJson.Default.ShelfRead)!;
        return read.Fault is { } fault ? throw new NotKeptException(Words(fault)) : Lying.Of(read.Entries ?? [], read.Decisions ?? [], read.Pictures ?? [], read.Sent ?? []);
    }

    public async Task Change(Shift shift)
    {
        List<ShelfPut> puts =
        [
            .. shift.Entries.Select(e => new ShelfPut(Shift.EntryStore, e.Key, JsonSerializer.Serialize(e, ShelfJson.Default.Unsent))),
            .. shift.Decisions.Select(d => new ShelfPut(Shift.DecisionStore, d.Address, JsonSerializer.Serialize(d, ShelfJson.Default.Unsaved))),
            .. shift.Sent.Select(s => new ShelfPut(Shift.SentStore, s.Key, JsonSerializer.Serialize(s, ShelfJson.Default.Sent))),
        ];
        var whole = new ShelfShift(puts, [.. shift.Drops.Select(d => new ShelfDrop(d.Store, d.Key))]);
        Done(await Module.InvokeAsync<string>("change", JsonSerializer.Serialize(whole, ShelfJson.Default.ShelfShift)));
    }

    public async Task<UnsentPicture> KeepPicture(byte[] bytes, string type)
    {
        var id = await Module.InvokeAsync<string>("fingerprint", bytes) is { Length: > 0 } found ? found : PictureKind.Id(bytes);
        Done(await Module.InvokeAsync<string>("keepPicture", id, bytes, type));
        return new(id, bytes.Length, type, default, null);
    }

    public Task<byte[]> Picture(string id) => Module.InvokeAsync<byte[]>("picture", id).AsTask();

    public Task PictureSent(string id) => Module.InvokeAsync<string>("pictureSent", id).AsTask();

    public async Task RefusePicture(string id, string refusal) => Done(await Module.InvokeAsync<string>("refusePicture", id, refusal));

    public Task<bool> Turn() => Module.InvokeAsync<bool>("turn").AsTask();

    public void EndTurn() => Module.InvokeVoid("endTurn");

    /// <summary>Bytes taken and bytes there are; −1 when the browser does not say. Lasting: it has promised not to clear them away.</summary>
    public async Task<(long Taken, long Most, bool Lasting)> Room(bool ask)
    {
        var room = await Module.InvokeAsync<double[]>("room", ask);
        return ((long)room[0], (long)room[1], room[2] > 0);
    }

    /// <summary>The app and what it reads are kept on this device.</summary>
    public bool KeepsReading() => Module.Invoke<bool>("isKept");

    public ValueTask ForgetRead() => Module.InvokeVoidAsync("forgetRead");

    public ValueTask WatchVersion<T>(DotNetObjectReference<T> line) where T : class => Module.InvokeVoidAsync("watchVersion", line);

    public ValueTask TakeVersion() => Module.InvokeVoidAsync("takeVersion");

    static void Done(string fault)
    {
        if (fault.Length > 0) throw new NotKeptException(Words(fault));
    }

    static string Words(string fault) => fault switch
    {
        "QuotaExceededError" => "This device has no room left for it: nothing was kept, and what you typed still stands here. Free some room (or forget the copies under \"Waiting\") and keep it again.",
        "NotSupportedError" or "SecurityError" or "InvalidStateError" or "UnknownError" =>
            "This browser lets the page keep nothing (a private window does that): nothing was kept. Open the app in an ordinary window, or keep it again when the host answers.",
        _ => $"This browser could not keep it ({fault}): what you typed still stands here. Keep it again.",
    };
}
