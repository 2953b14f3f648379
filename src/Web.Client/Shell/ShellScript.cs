using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace WitnessMark.Web.Client.Shell;

/// <summary>What the frame round every page needs of the browser. Loaded once before the first page is shown.</summary>
public sealed class ShellScript(IJSRuntime js)
{
    IJSInProcessObjectReference? _module;

    IJSInProcessObjectReference Module => _module ?? throw new InvalidOperationException("Load the shell script first.");

    public async Task Load() => _module = await js.InvokeAsync<IJSInProcessObjectReference>("import", "./js/shell.js");

    /// <summary>Opens a dialog over the page; the browser gives the focus back when it is shut.</summary>
    public void Show(ElementReference dialog) => Module.InvokeVoid("show", dialog);

    public void Shut(ElementReference dialog) => Module.InvokeVoid("shut", dialog);

    /// <param name="listener">Is told by a method <c>Pressed</c>: one of / ? a n, or g and a letter.</param>
    public IJSInProcessObjectReference HearKeys<T>(DotNetObjectReference<T> listener) where T : class => Module.Invoke<IJSInProcessObjectReference>("hearKeys", listener);

    /// <summary>Sets and keeps a wish that shapes the page; empty is as usual.</summary>
    public void Wish(string name, string value) => Module.InvokeVoid("wish", name, value);

    /// <summary>The focus follows the page's heading while the page is still being fetched.</summary>
    public void FollowHead() => Module.InvokeVoid("followHead");

    /// <summary>Scrolls a chosen line of a list into sight.</summary>
    public void InSight(string id) => Module.InvokeVoid("inSight", id);

    public void Print() => Module.InvokeVoid("print");

    /// <summary>Lets a picture be drawn nearer and moved; has <c>nearer</c>, <c>farther</c>, <c>fit</c> and <c>stop</c>.</summary>
    public IJSInProcessObjectReference LivePicture(ElementReference place) => Module.Invoke<IJSInProcessObjectReference>("livePicture", place);
}
