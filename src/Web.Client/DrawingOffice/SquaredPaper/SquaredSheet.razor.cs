using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

/// <summary>Squared paper: features are placed on it roughly, and the plan comes true on it.</summary>
public sealed partial class SquaredSheet : ComponentBase, IDisposable
{
    ElementReference _svg;
    View _view = View.Usual;
    double _pixelsWide = 600;
    bool _still, _fitted, _pixelsKnown;
    ImmutableDictionary<string, Shown> _shown = ImmutableDictionary<string, Shown>.Empty;
    DotNetObjectReference<SquaredSheet>? _self;
    IJSInProcessObjectReference? _watch;

    [Inject] PageScript Page { get; set; } = default!;

    [Parameter, EditorRequired] public ImmutableArray<Feature> Features { get; set; } = [];

    [Parameter] public Plan? Plan { get; set; }

    [Parameter] public Tool Tool { get; set; }

    [Parameter] public EventCallback<Tool> ToolChanged { get; set; }

    [Parameter] public string? Selected { get; set; }

    [Parameter] public EventCallback<string?> SelectedChanged { get; set; }

    [Parameter] public ImmutableArray<Tie> Ties { get; set; } = [];

    /// <summary>New features to put on the sketch.</summary>
    [Parameter] public EventCallback<ImmutableArray<Feature>> OnPlace { get; set; }

    /// <summary>A feature put elsewhere on the sketch.</summary>
    [Parameter] public EventCallback<Feature> OnMove { get; set; }

    [Parameter] public EventCallback<string> OnRemove { get; set; }

    double PerPixel => _view.Width / _pixelsWide;

    string Label => $"Squared paper with {Features.Length} features. {(Tool == Tool.Move ? "Arrow keys move the chosen feature, N chooses the next" : $"Arrow keys move the cross, Enter places: {Tool.ToString().ToLowerInvariant()}")}; C, H, S, E, A and M choose what is placed; plus and minus zoom, 0 shows all.";

    string Note
    {
        get
        {
            var square = $"square {_view.Square:0.###} mm";
            return Plan is not null && PlanMarks.EllipseScale(_shown.Values, _view) is { } times ? $"{square} · ± drawn {times:0.##} times" : square;
        }
    }

    protected override void OnParametersSet()
    {
        _shown = Shown.All(Features, Plan);
        if (!_fitted && _shown.Count > 1) Fit();
    }

    protected override void OnAfterRender(bool first)
    {
        if (!first) return;
        _still = Page.Stillness();
        _self = DotNetObjectReference.Create(this);
        _watch = Page.WatchSize(_svg, _self);
        Page.HoldKeys(_svg);
    }

    [JSInvokable]
    public void Sized(double width, double height)
    {
        if (width < 1 || height < 1) return;
        (_pixelsWide, _pixelsKnown) = (width, true);
        _view = _view.Shaped(width / height);
        if (!_fitted && _shown.Count > 1) Fit();
        StateHasChanged();
    }

    void Fit()
    {
        _fitted = _pixelsKnown;
        var reach = _shown.Values.SelectMany(s => new[] { s.At + new Vec2(1, 1) * (s.Size ?? 0) / 2, s.At - new Vec2(1, 1) * (s.Size ?? 0) / 2 });
        _view = View.Around([.. reach], _view.Width / _view.Height);
    }

    void Zoom(double factor) => _view = _view.Zoomed(factor, _view.Middle);

    /// <summary>Lines of the fine squares, five to a firm one.</summary>
    static string FinePath(double square) =>
        string.Concat(Enumerable.Range(1, 4).Select(i => FormattableString.Invariant($"M{square * i / 5:0.###} 0V{square:0.###}M0 {square * i / 5:0.###}H{square:0.###}")));

    public void Dispose()
    {
        _watch?.InvokeVoid("stop");
        _watch?.Dispose();
        _self?.Dispose();
    }
}
