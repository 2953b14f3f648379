using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.Shell;

/// <summary>What only the browser can do, behind plain calls. Loaded once before the first page is shown.</summary>
public sealed class PageScript(IJSRuntime js)
{
    IJSInProcessObjectReference? _module;

    IJSInProcessObjectReference Module => _module ?? throw new InvalidOperationException("Load the page script first.");

    public async Task Load() => _module = await js.InvokeAsync<IJSInProcessObjectReference>("import", "./js/page.js");

    public string? Kept(string key) => ((IJSInProcessRuntime)js).Invoke<string?>("localStorage.getItem", key);

    public void Keep(string key, string text) => ((IJSInProcessRuntime)js).InvokeVoid("localStorage.setItem", key, text);

    public void Forget(string key) => ((IJSInProcessRuntime)js).InvokeVoid("localStorage.removeItem", key);

    /// <summary>The keys of everything kept under keys that begin so, in their order.</summary>
    public string[] KeysUnder(string prefix) => Module.Invoke<string[]>("keys", prefix);

    /// <summary>Until this window is closed; null forgets it.</summary>
    public void KeepDraft(string form, string? text) => Module.InvokeVoid("keepDraft", form, text);

    public string? Draft(string form) => Module.Invoke<string?>("draft", form);

    /// <summary>Phone or desk, by what it is pointed with.</summary>
    public string KindOfDevice() => Module.Invoke<string>("kindOfDevice");

    /// <summary>A pointer's place in the drawing's own units (SVG: y down).</summary>
    public Vec2 ToDrawing(ElementReference svg, double clientX, double clientY)
    {
        var at = Module.Invoke<double[]>("toDrawing", svg, clientX, clientY);
        return new(at[0], at[1]);
    }

    public void Capture(ElementReference svg, long pointer) => Module.InvokeVoid("capture", svg, pointer);

    public IJSInProcessObjectReference WatchSize<T>(ElementReference svg, DotNetObjectReference<T> component) where T : class =>
        Module.Invoke<IJSInProcessObjectReference>("watchSize", svg, component);

    public void HoldKeys(ElementReference svg) => Module.InvokeVoid("holdKeys", svg);

    /// <summary>The person has asked the app or the machine for as little motion as can be.</summary>
    public bool Stillness() => Module.Invoke<bool>("stillness");

    public void Focus(string id) => Module.InvokeVoid("focus", id);

    /// <param name="room">Which of the back rooms.</param>
    /// <param name="listener">Is told the share done, 0 to 1, by a method <c>Told</c>.</param>
    /// <param name="bytes">A Uint8Array to go with it; null for none.</param>
    public ValueTask<string> AskBackRoom<T>(string room, string task, string text, DotNetObjectReference<T>? listener, IJSObjectReference? bytes = null) where T : class =>
        Module.InvokeAsync<string>("askBackRoom", room, task, text, listener, bytes);

    public void CloseBackRoom(string room) => Module.InvokeVoid("closeBackRoom", room);

    public async Task Download(string name, string type, byte[] bytes)
    {
        using var stream = new DotNetStreamReference(new MemoryStream(bytes));
        await Module.InvokeVoidAsync("download", name, type, stream);
    }
}
