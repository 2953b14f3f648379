using System.Collections.Immutable;
using System.Text.Json;
using Microsoft.JSInterop;
using WitnessMark.FrontOffice.MeasurePhoto;
using WitnessMark.Maths;
using WitnessMark.Web.Client.BackRoom;

namespace WitnessMark.Web.Client.DrawingOffice.Photos;

/// <summary>
/// One photograph, decoded by the browser and measured in the back room. A back room that was closed meanwhile, by Stop here or
/// elsewhere, has lost it: it is laid down again and the question asked once more.
/// </summary>
sealed class PhotoRoom(Desk desk, IJSRuntime js) : IAsyncDisposable
{
    /// <summary>Pixels that are measured in; a larger picture is made smaller by the browser.</summary>
    const int Most = 12_000_000;

    IJSObjectReference? _eye, _pixels;
    PhotoTrueAsked? _true;

    /// <summary>px, upright; null until a picture is open.</summary>
    public PhotoSize? Size { get; private set; }

    /// <returns>Why it cannot be opened; null when it is open.</returns>
    public async Task<string?> Open(string address)
    {
        _eye ??= await js.InvokeAsync<IJSObjectReference>("import", "./js/photo-eye.js");
        if (await _eye.InvokeAsync<int[]?>("open", address, Most) is not [var width, var height])
            return Refusal.Of("picture", null, "the browser cannot show it; send a JPEG or PNG picture").Sentence;
        Size = new(width, height);
        _pixels = await _eye.InvokeAsync<IJSObjectReference>("pixels");
        _true = null;
        return null;
    }

    /// <exception cref="RefusedException">No target, or what was said of it cannot be.</exception>
    public async Task<PhotoShown> MakeTrue(PhotoTrueAsked asked, Action<double> told, CancellationToken stop)
    {
        await Lay(stop);
        var shown = JsonSerializer.Deserialize(await desk.Ask(nameof(Work.MakePhotoTrue), JsonSerializer.Serialize(asked, WorkJson.Default.PhotoTrueAsked), stop, told), WorkJson.Default.PhotoShown)!;
        _true = asked;
        return shown;
    }

    /// <exception cref="RefusedException">Nothing can be picked before the photograph was made true.</exception>
    public async Task<PickAnswer> Pick(PickAsked asked, CancellationToken stop) =>
        JsonSerializer.Deserialize(await Again(nameof(Work.PickInPhoto), JsonSerializer.Serialize(asked, WorkJson.Default.PickAsked), stop), WorkJson.Default.PickAnswer)!;

    public Task<string> Trail(ImmutableArray<Vec2> places, CancellationToken stop) =>
        Again(nameof(Work.TrailInPhoto), JsonSerializer.Serialize(places, WorkJson.Default.ImmutableArrayVec2), stop);

    async Task<string> Again(string task, string text, CancellationToken stop)
    {
        var answer = await desk.Ask(task, text, stop);
        if (answer != Work.NoPhoto || _true is not { } before) return answer;
        await MakeTrue(before, _ => { }, stop);
        return await desk.Ask(task, text, stop);
    }

    async Task Lay(CancellationToken stop)
    {
        if (Size is not { } size) throw new RefusedException(Refusal.Of("picture", null, "choose a photograph first"));
        await desk.Ask(nameof(Work.LayPhoto), JsonSerializer.Serialize(size, WorkJson.Default.PhotoSize), stop, bytes: _pixels);
    }

    public async ValueTask DisposeAsync()
    {
        if (_pixels is not null) await _pixels.DisposeAsync();
        if (_eye is null) return;
        await _eye.InvokeVoidAsync("shut");
        await _eye.DisposeAsync();
    }
}
