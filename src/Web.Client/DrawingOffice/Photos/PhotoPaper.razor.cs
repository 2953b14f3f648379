using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;
using WitnessMark.Maths;
using WitnessMark.Web.Client.DrawingOffice.SquaredPaper;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.DrawingOffice.Photos;

/// <summary>A picture to look at and point into.</summary>
public sealed partial class PhotoPaper : ComponentBase, IDisposable
{
    /// <summary>A pointer that moved less meant to pick, px.</summary>
    const double Still = 6;

    readonly List<Vec2> _way = [];
    ElementReference _svg;
    Pointers _pointers = Pointers.None;
    View _view = View.Usual;
    double _pixelsWide = 600, _moved;
    string _fitted = "";
    bool _pinched;
    DotNetObjectReference<PhotoPaper>? _self;
    IJSInProcessObjectReference? _watch;

    [Inject] PageScript Page { get; set; } = default!;

    [Parameter, EditorRequired] public string Id { get; set; } = "";

    /// <summary>What the picture shows.</summary>
    [Parameter, EditorRequired] public string Label { get; set; } = "";

    [Parameter, EditorRequired] public string Href { get; set; } = "";

    /// <summary>Its top left corner.</summary>
    [Parameter] public Vec2 Corner { get; set; }

    [Parameter, EditorRequired] public double Width { get; set; }

    [Parameter, EditorRequired] public double Height { get; set; }

    /// <summary>A touch picks something.</summary>
    [Parameter] public bool Placing { get; set; }

    /// <summary>One finger draws instead of moving the picture; two still bring it nearer.</summary>
    [Parameter] public bool Drawing { get; set; }

    /// <summary>The way of a finger from touching to lifting.</summary>
    [Parameter] public EventCallback<ImmutableArray<Vec2>> OnDrawn { get; set; }

    /// <summary>A place that was touched.</summary>
    [Parameter] public EventCallback<Vec2> OnPick { get; set; }

    /// <summary>What is drawn over it; y down.</summary>
    [Parameter] public RenderFragment? ChildContent { get; set; }

    double PerPixel => _view.Width / _pixelsWide;

    string Aim => FormattableString.Invariant($"M{_view.Middle.X - 8 * PerPixel:0.###} {-_view.Middle.Y:0.###}h{16 * PerPixel:0.###}M{_view.Middle.X:0.###} {-_view.Middle.Y - 8 * PerPixel:0.###}v{16 * PerPixel:0.###}");

    protected override void OnParametersSet()
    {
        var shape = FormattableString.Invariant($"{Corner.X:0}/{Width:0}/{Height:0}");
        if (shape == _fitted) return;
        _fitted = shape;
        Fit();
    }

    protected override void OnAfterRender(bool first)
    {
        if (!first) return;
        _self = DotNetObjectReference.Create(this);
        _watch = Page.WatchSize(_svg, _self);
        Page.HoldKeys(_svg);
    }

    [JSInvokable]
    public void Sized(double width, double height)
    {
        if (width < 1 || height < 1) return;
        _pixelsWide = width;
        _view = _view.Shaped(width / height);
        Fit();
        StateHasChanged();
    }

    /// <summary>The whole picture with a little room round it.</summary>
    void Fit()
    {
        var aspect = _view.Width / _view.Height;
        var width = Math.Max(Width, Height * aspect) * 1.03;
        _view = new(new(Corner.X + Width / 2, Corner.Y - Height / 2), width, width / aspect);
    }

    void Zoom(double factor) => _view = _view.Zoomed(factor, _view.Middle);

    void Down(PointerEventArgs e)
    {
        Page.Capture(_svg, e.PointerId);
        _pointers = _pointers.With(e.PointerId, new(e.ClientX, e.ClientY));
        _way.Clear();
        if (_pointers.Count == 1) (_moved, _pinched) = (0, false);
        else _pinched = true;
        if (Drawing && !_pinched) _way.Add(At(e));
    }

    void Along(PointerEventArgs e)
    {
        if (_pointers.Along(e.PointerId, new(e.ClientX, e.ClientY)) is not { } went) return;
        _pointers = went.Next;
        _moved += went.Stroke.Length;
        if (_pointers.Count == 1 && Drawing)
        {
            if (!_pinched) _way.Add(At(e));
        }
        else if (_pointers.Count == 2 || (!Drawing && (_moved > Still || !Placing))) _view = went.Stroke.Seen(_view, PerPixel, At);
    }

    async Task Up(PointerEventArgs e)
    {
        var alone = _pointers.Count == 1;
        _pointers = _pointers.Without(e.PointerId);
        if (alone && Drawing && !_pinched && _way.Count > 0)
        {
            ImmutableArray<Vec2> drawn = [.. _way];
            _way.Clear();
            await OnDrawn.InvokeAsync(drawn);
        }
        else if (alone && Placing && !_pinched && _moved <= Still) await OnPick.InvokeAsync(At(e));
    }

    void Cancelled(PointerEventArgs e)
    {
        _pointers = _pointers.Without(e.PointerId);
        _way.Clear();
    }

    void Wheel(WheelEventArgs e) => _view = _view.Wheeled(e.DeltaY, At(e));

    async Task Key(KeyboardEventArgs e)
    {
        var step = _view.Width / (e.ShiftKey ? 10 : 50);
        switch (e.Key)
        {
            case "ArrowLeft": _view = _view.Moved(new(-step, 0)); break;
            case "ArrowRight": _view = _view.Moved(new(step, 0)); break;
            case "ArrowUp": _view = _view.Moved(new(0, step)); break;
            case "ArrowDown": _view = _view.Moved(new(0, -step)); break;
            case "+" or "=": Zoom(0.7); break;
            case "-": Zoom(1.4); break;
            case "0": Fit(); break;
            case "Enter" when Placing || Drawing: await OnPick.InvokeAsync(_view.Middle); break;
        }
    }

    Vec2 At(MouseEventArgs e) => At(new Vec2(e.ClientX, e.ClientY));

    /// <summary>Where on the picture a place of the screen lies.</summary>
    Vec2 At(Vec2 screen)
    {
        var p = Page.ToDrawing(_svg, screen.X, screen.Y);
        return new(p.X, -p.Y);
    }

    string Way => "M" + string.Join('L', _way.Select(p => $"{N(p.X)} {N(-p.Y)}"));

    static string N(double value) => value.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);

    public void Dispose()
    {
        _watch?.InvokeVoid("stop");
        _watch?.Dispose();
        _self?.Dispose();
    }
}
