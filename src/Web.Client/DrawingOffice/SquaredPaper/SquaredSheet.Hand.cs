using System.Collections.Immutable;
using Microsoft.AspNetCore.Components.Web;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

/// <summary>What mouse, finger and keys do on the paper.</summary>
public sealed partial class SquaredSheet
{
    /// <summary>How near a pointer must come to a feature to mean it, px: half a touch target, and finer for a mouse.</summary>
    const double FingerReach = 22, MouseReach = 12;

    Pointers _pointers = Pointers.None;
    (Vec2 From, Vec2 To)? _rubber;
    string? _dragged, _pendingCorner;
    Vec2 _down;

    async Task Down(PointerEventArgs e)
    {
        Page.Capture(_svg, e.PointerId);
        _pointers = _pointers.With(e.PointerId, new(e.ClientX, e.ClientY));
        if (_pointers.Count > 1)
        {
            _dragged = null;
            _rubber = null;
            return;
        }
        _down = At(e);
        if (Tool == Tool.Move && Near(_down, Reach(e)) is { } hit)
        {
            _dragged = hit.Feature.Kind == FeatureKind.Edge ? null : hit.Id;
            await SelectedChanged.InvokeAsync(hit.Id);
        }
    }

    async Task Along(PointerEventArgs e)
    {
        if (_pointers.Along(e.PointerId, new(e.ClientX, e.ClientY)) is not { } went) return;
        _pointers = went.Next;
        if (_pointers.Count == 1 && _dragged is { } id) await Moved(id, Snapped(At(e)));
        else if (_pointers.Count == 2 || Tool == Tool.Move) _view = went.Stroke.Seen(_view, PerPixel, At);
        else if (Tool is Tool.Slot or Tool.Arc) _rubber = (Snapped(_down), Snapped(At(e)));
    }

    async Task Up(PointerEventArgs e)
    {
        var alone = _pointers.Count == 1;
        _pointers = _pointers.Without(e.PointerId);
        _rubber = null;
        if (_dragged is not null) _dragged = null;
        else if (alone && Tool != Tool.Move) await Place(Snapped(_down), Snapped(At(e)), Reach(e));
    }

    void Cancelled(PointerEventArgs e)
    {
        _pointers = _pointers.Without(e.PointerId);
        _dragged = null;
        _rubber = null;
    }

    void Wheel(WheelEventArgs e) => _view = _view.Wheeled(e.DeltaY, At(e));

    /// <returns>What was put on the sketch; nothing where an edge only begins at a corner that stands.</returns>
    async Task<ImmutableArray<Feature>> Place(Vec2 from, Vec2 to, double reach)
    {
        _fitted = true;
        var drawn = from.DistanceTo(to);
        ImmutableArray<Feature> placed = Tool switch
        {
            Tool.Corner => [Placing.Corner(Features, to)],
            Tool.Hole => [Placing.Hole(Features, to)],
            Tool.Arc => [Placing.Arc(Features, from, drawn > reach ? drawn : null)],
            Tool.Slot => [Placing.Slot(Features, from, drawn > reach ? to : from + new Vec2(_view.Square, 0))],
            Tool.Edge => EdgeTo(to, reach),
            _ => [],
        };
        if (!placed.IsEmpty) await OnPlace.InvokeAsync(placed);
        return placed;
    }

    /// <summary>Edges run on from corner to corner; where there is no corner yet, one is put.</summary>
    ImmutableArray<Feature> EdgeTo(Vec2 at, double reach)
    {
        var corner = Near(at, reach, FeatureKind.Point)?.Feature ?? Placing.Corner(Features, at);
        ImmutableArray<Feature> placed = Features.Any(f => f.Id == corner.Id) ? [] : [corner];
        if (_pendingCorner is { } first && first != corner.Id && Features.Any(f => f.Id == first)) placed = placed.Add(Placing.Edge(Features, first, corner.Id));
        _pendingCorner = corner.Id;
        return placed;
    }

    string? NextId()
    {
        if (Features.IsEmpty) return null;
        var now = Features.Select(f => f.Id).ToList().IndexOf(Selected ?? "");
        return Features[(now + 1) % Features.Length].Id;
    }

    async Task Moved(string id, Vec2 to)
    {
        if (Features.FirstOrDefault(f => f.Id == id) is { } f) await OnMove.InvokeAsync(f with { Sketch = to });
    }

    Shown? Near(Vec2 at, double reach, FeatureKind? only = null) => _shown.Values
        .Where(s => only is null ? s.Feature.From is null : s.Feature.Kind == only)
        .Select(s => (s, Away: Math.Max(0, s.At.DistanceTo(at) - (s.Feature.Kind == FeatureKind.Hole ? (s.Size ?? 0) / 2 : 0))))
        .Where(x => x.Away <= reach).OrderBy(x => x.Away).Select(x => x.s).FirstOrDefault();

    double Reach(PointerEventArgs e) => (e.PointerType == "mouse" ? MouseReach : FingerReach) * PerPixel;

    Vec2 At(MouseEventArgs e) => At(new Vec2(e.ClientX, e.ClientY));

    /// <summary>Where on the paper a place of the screen lies.</summary>
    Vec2 At(Vec2 screen)
    {
        var p = Page.ToDrawing(_svg, screen.X, screen.Y);
        return new(p.X, -p.Y);
    }

    /// <summary>To a tenth of a firm square: rough is enough, and round figures are easier to talk about.</summary>
    Vec2 Snapped(Vec2 p)
    {
        var step = _view.Square / 10;
        return new(Math.Round(p.X / step) * step, Math.Round(p.Y / step) * step);
    }
}
