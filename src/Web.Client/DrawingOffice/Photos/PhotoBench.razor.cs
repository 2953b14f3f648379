using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.FrontOffice.MeasurePhoto;
using WitnessMark.Maths;
using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Client.BackRoom;
using WitnessMark.Web.Client.DrawingOffice.Measure;
using WitnessMark.Web.Client.Outbox;

namespace WitnessMark.Web.Client.DrawingOffice.Photos;

/// <summary>One photograph on the bench. What the person says of it is kept as he says it; what is found is worked out anew.</summary>
public sealed partial class PhotoBench : ComponentBase, IAsyncDisposable
{
    static readonly (PickKind? Tool, string Words)[] Tools = [(null, "Look"), (PickKind.Hole, "Hole"), (PickKind.Corner, "Corner"), (PickKind.Outline, "Trace")];

    readonly List<Vec2> _along = [];
    PhotoRoom _room = default!;
    PhotoWork _work = new();
    PhotoShown? _shown;
    PickKind? _tool;
    string? _why, _trail;
    double? _share;
    bool _byHand, _stale;
    CancellationTokenSource? _stop;

    [Inject] Desk Desk { get; set; } = default!;

    [Inject] IJSRuntime Js { get; set; } = default!;

    [Parameter, EditorRequired] public Decision<SamplePhotograph> Photo { get; set; } = default!;

    [Parameter, EditorRequired] public SampleBench Bench { get; set; } = default!;

    string Href => $"api/pictures/{Photo.Row.Picture}";

    string Advice => _tool switch
    {
        PickKind.Hole => "Touch inside a hole: a circle is fitted to its edge.",
        PickKind.Corner => "Touch the corner. Go nearer first: it is drawn to the corner or edge within a few pixels, and elsewhere stays where you touched.",
        PickKind.Outline => "Touch along the edge, a place before and after each corner; the line follows the edge between.",
        _ => "Draw the picture about; two fingers or the wheel bring it nearer.",
    };

    protected override async Task OnInitializedAsync()
    {
        _room = new(Desk, Js);
        // A photograph kept on another page has no work on it yet.
        var read = PhotoWorkJson.Read(string.IsNullOrWhiteSpace(Photo.Row.Work) ? "{}" : Photo.Row.Work);
        if (read.Ok) _work = read.Value;
        else _why = read.Refusal!.Sentence;
        await MakeTrue();
    }

    async Task MakeTrue()
    {
        if (_stop is not null) return;
        var stop = _stop = new();
        (_why, _share) = (null, null);
        try
        {
            if (_room.Size is null) _why = await _room.Open(Href);
            StateHasChanged();
            if (_room.Size is not { } size) return;
            _work = _work.In(size.Width);
            _shown = await _room.MakeTrue(new(Photo.Row.Name, PhotoWorkJson.Write(_work)), Told, stop.Token);
            (_byHand, _stale) = (false, false);
        }
        catch (RefusedException e)
        {
            (_why, _shown) = ($"{e.Message} You can pick the corners by hand.", null);
        }
        catch (OperationCanceledException)
        {
            _why = "Stopped; nothing was changed.";
        }
        finally
        {
            _stop = null;
            StateHasChanged();
        }
    }

    void Told(double share)
    {
        _share = share;
        StateHasChanged();
    }

    void Stop() => _stop?.Cancel();

    void Keep(PhotoWork work)
    {
        _work = work;
        Photo.Change(Photo.Row with { Work = PhotoWorkJson.Write(work) });
    }

    void Changed(PhotoWork work)
    {
        _stale = true;
        Keep(work);
    }

    void Choose(PickKind? tool)
    {
        (_tool, _trail) = (tool, null);
        _along.Clear();
    }

    async Task Pointed(Vec2 mm)
    {
        if (_tool is not { } tool || _shown is null) return;
        if (tool == PickKind.Outline)
        {
            _along.Add(mm);
            await Trail();
        }
        else await Pick(tool, [mm], closed: false);
    }

    async Task Trail() => await Asked(async stop => _trail = _along.Count == 0 ? null : await _room.Trail([.. _along], stop));

    async Task TakeLastBack()
    {
        _along.RemoveAt(_along.Count - 1);
        await Trail();
    }

    async Task EndTrace(bool closed)
    {
        await Pick(PickKind.Outline, [.. _along], closed);
        Choose(PickKind.Outline);
    }

    async Task Pick(PickKind kind, ImmutableArray<Vec2> places, bool closed) => await Asked(async stop =>
    {
        var name = _work.Free(kind, Bench.Features.Select(f => f.Id));
        var answer = await _room.Pick(new(name, kind, places, closed), stop);
        if (answer.Shown.Why is { } nothing)
        {
            _why = nothing;
            return;
        }
        Keep(_work with { Picks = _work.Picks.Add(answer.Pick) });
        _shown = _shown! with { Picks = _shown.Picks.Add(answer.Shown) };
    });

    /// <summary>A short question of the back room; while a long one runs it waits its turn.</summary>
    async Task Asked(Func<CancellationToken, Task> ask)
    {
        _why = null;
        try
        {
            await ask(CancellationToken.None);
        }
        catch (RefusedException e)
        {
            _why = e.Message;
        }
        catch (OperationCanceledException)
        {
            _why = "The search was stopped; touch it again.";
        }
    }

    void Remove(string name)
    {
        Keep(_work with { Picks = [.. _work.Picks.Where(p => p.Name != name)] });
        _shown = _shown! with { Picks = [.. _shown.Picks.Where(p => p.Name != name)] };
    }

    async Task Rename((string From, string To) names)
    {
        Keep(_work with { Picks = [.. _work.Picks.Select(p => p.Name == names.From ? p with { Name = names.To } : p)] });
        // The names of its corners and readings follow from its own: it is picked once more.
        var pick = _work.Picks.First(p => p.Name == names.To);
        await Asked(async stop =>
        {
            var again = await _room.Pick(new(pick.Name, pick.Kind, pick.Clicks, pick.Closed, AsTaken: true), stop);
            _shown = _shown! with { Picks = [.. _shown.Picks.Select(p => p.Name == names.From ? again.Shown : p)] };
        });
    }

    /// <summary>The corners by hand are let go.</summary>
    async Task Look()
    {
        Keep(_work with { Corners = [] });
        await MakeTrue();
    }

    void ByHand() => (_byHand, _shown, _why) = (true, null, null);

    async Task UseCorners((string? Target, ImmutableArray<Tie> Corners) by)
    {
        Keep(_work with { Target = by.Target, Corners = by.Corners });
        await MakeTrue();
    }

    async Task TakeTheirs()
    {
        Photo.TakeTheirs();
        if (PhotoWorkJson.Read(Photo.Row.Work) is { Ok: true } read) _work = read.Value;
        await MakeTrue();
    }

    static string N(double value) => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    public ValueTask DisposeAsync()
    {
        Stop();
        return _room.DisposeAsync();
    }
}
