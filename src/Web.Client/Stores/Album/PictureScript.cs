using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace WitnessMark.Web.Client.Stores.Album;

/// <summary>What only the browser can do with pictures, behind plain calls.</summary>
public sealed class PictureScript(IJSRuntime js)
{
    IJSInProcessObjectReference? _module;

    public async Task<IJSInProcessObjectReference> Watch<T>(ElementReference area, DotNetObjectReference<T> listener) where T : class =>
        (await Module()).Invoke<IJSInProcessObjectReference>("watch", area, listener);

    public async Task<IJSInProcessObjectReference> WatchEnd<T>(ElementReference mark, DotNetObjectReference<T> listener) where T : class =>
        (await Module()).Invoke<IJSInProcessObjectReference>("watchEnd", mark, listener);

    /// <summary>Hears the arrow keys that turn over to the neighbours.</summary>
    public async Task<IJSInProcessObjectReference> Turning<T>(DotNetObjectReference<T> listener) where T : class =>
        (await Module()).Invoke<IJSInProcessObjectReference>("turning", listener);

    /// <summary>The first bytes of a file that was chosen.</summary>
    public async Task<byte[]> Head(int file, int most) => await (await Module()).InvokeAsync<byte[]>("head", file, most);

    /// <returns>The status (0: nobody answered, −1: stopped here) and what was answered.</returns>
    public async Task<(int Status, string Text)> Send<T>(int file, string address, DotNetObjectReference<T> listener) where T : class =>
        await (await Module()).InvokeAsync<string[]>("send", file, address, listener) is [var status, var text] ? (int.Parse(status, System.Globalization.CultureInfo.InvariantCulture), text) : (0, "");

    public void Stop(int file) => _module?.InvokeVoid("stop", file);

    /// <summary>The whole of a file that was chosen.</summary>
    public async Task<Stream> Bytes(int file, long most)
    {
        var blob = await (await Module()).InvokeAsync<IJSStreamReference>("bytes", file);
        return await blob.OpenReadStreamAsync(most);
    }

    public void Drop(int file) => _module?.InvokeVoid("drop", file);

    /// <summary>Height over width; null when it cannot be shown.</summary>
    public async Task<double?> Tall(string address) =>
        await (await Module()).InvokeAsync<double[]>("sizeOf", address) is [> 0 and var width, > 0 and var height] ? height / width : null;

    public async Task Save(string address) => (await Module()).InvokeVoid("save", address);

    async Task<IJSInProcessObjectReference> Module() => _module ??= await js.InvokeAsync<IJSInProcessObjectReference>("import", "./js/pictures.js");
}
