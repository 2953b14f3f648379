using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using WitnessMark.FrontOffice.MarkPicture;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Stores.Album.One;

/// <summary>One picture: looked at, spoken of, drawn on. What is drawn is kept after every line.</summary>
public sealed partial class PicturePage : StoresPage, IDisposable
{
    PictureOpened? _opened;
    StrokeTrail _trail = StrokeTrail.From([]);
    Drawing _pen = Drawing.None;
    Decision<PictureLayer>? _layer;
    double _tall = 0.75;
    bool _hidden, _unseen, _drawn;
    string _unread = "", _words = "";
    string? _why;
    Guid? _part;
    DotNetObjectReference<PicturePage>? _self;
    IJSInProcessObjectReference? _turning;
    bool _gone;

    [Inject] PictureServer Album { get; set; } = default!;

    [Inject] PictureScript Script { get; set; } = default!;

    [Parameter] public Guid TakenId { get; set; }

    /// <summary>What has become of what was drawn.</summary>
    string Kept => _unread.Length > 0 ? _unread : _layer?.Refusal ?? (!_drawn ? "" : _layer is { Waiting: false } ? "Kept" : Tray.Away ? "Kept here" : "Keeping…");

    string Title => _opened is not { Standing.Row: var row } ? "Picture" : row.Words.Length > 0 ? row.Words : row.PartId is { } part ? NameOf(part) : "Picture of the vehicle";

    /// <summary>With the line through the places that were picked by keys.</summary>
    ImmutableArray<Stroke> Shown => _pen.Kind == StrokeKind.Pen && _pen.Begun.Length > 1 ? _trail.Now.Add(Stroke.Pen(_pen.Ink, _pen.Weight, _pen.Begun)) : _trail.Now;

    /// <summary>Turning over to the next picture does not fetch the whole vehicle again.</summary>
    protected override async Task OnParametersSetAsync()
    {
        if (Tree is { } tree && tree.Vehicle.Row.Id == VehicleId) await Fetch(tree);
        else await Again();
    }

    protected override async Task OnAfterRenderAsync(bool first)
    {
        if (!first) return;
        _self = DotNetObjectReference.Create(this);
        _turning = await Script.Turning(_self);
        if (_gone) Dispose();
    }

    /// <summary>To the neighbour, where there is one.</summary>
    /// <param name="by">−1 newer, 1 older.</param>
    [JSInvokable]
    public void Turn(int by)
    {
        if ((by < 0 ? _opened?.Standing.Newer : _opened?.Standing.Older) is { } next) Navigation.NavigateTo($"vehicle/{VehicleId}/pictures/{next}");
    }

    protected override async Task Fetch(VehicleTree tree)
    {
        var opened = (await Server.Patient(() => Album.Open(VehicleId, TakenId))).Value;
        var another = opened?.Standing.Row.Id != _opened?.Standing.Row.Id;
        _opened = opened;
        if (opened is null) return;
        (_words, _part) = (opened.Standing.Row.Words, opened.Standing.Row.PartId);
        if (!another) return;
        (_pen, _hidden, _why, _drawn) = (_pen with { Begun = [] }, false, null, false);
        Leave();
        _layer = Tray.Decision(opened.Layer);
        _layer.Changed += Told;
        Lay();
        var tall = await Script.Tall(PictureServer.View(opened.Standing.Row.Picture));
        (_tall, _unseen) = (tall ?? 0.75, tall is null);
    }

    public void Dispose()
    {
        _gone = true;
        Leave();
        _turning?.InvokeVoid("stop");
        _turning?.Dispose();
        _self?.Dispose();
    }

    void Leave()
    {
        if (_layer is not null) _layer.Changed -= Told;
    }

    void Told() => InvokeAsync(StateHasChanged);

    void Lay()
    {
        var read = StrokesJson.Read(_layer!.Row.Strokes);
        _trail = StrokeTrail.From(read.Ok ? read.Value : []);
        _unread = read.Refusal?.Sentence ?? "";
    }

    Vec2 Place(Vec2 at) => Stroke.Held(new(at.X / StrokeLines.Wide, -at.Y / (StrokeLines.Wide * _tall)));

    Task Picked(Vec2 at) => Done(_pen.Picked(Place(at)));

    Task Drawn(ImmutableArray<Vec2> way) => Done(_pen.Drawn([.. way.Select(Place)]));

    Task Finish() => Done(_pen.Finished());

    async Task Done((Drawing Next, Stroke? Done) drawn)
    {
        _pen = drawn.Next;
        if (drawn.Done is { } stroke) await Change(_trail.Drawn(stroke));
    }

    Task Change(StrokeTrail trail)
    {
        (_trail, _hidden, _drawn) = (trail, false, true);
        var layer = new PictureLayer(TakenId, VehicleId, trail.Now.IsEmpty ? "" : StrokesJson.Write(trail.Now));
        _unread = layer.Wrong()?.Sentence ?? "";
        if (_unread.Length == 0) _layer!.Change(layer);
        return Task.CompletedTask;
    }

    void TakeOver()
    {
        _layer!.TakeTheirs();
        Lay();
    }

    async Task Say() => _why = await Append(new PictureSaid(Tray.NewId(), VehicleId, TakenId, _part, _words.Trim(), Now, Device));

    async Task<string?> TakeItBack()
    {
        if (await TakeBack(TakenId, "taken back on its page") is { } why) return why;
        Navigation.NavigateTo($"vehicle/{VehicleId}/pictures");
        return null;
    }
}
