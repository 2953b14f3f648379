using Microsoft.AspNetCore.Components.Web;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

/// <summary>The whole sketch by keys alone: a letter takes a tool, arrows move the cross, Enter places. What is done is told.</summary>
public sealed partial class SquaredSheet
{
    Vec2? _cross, _begun;
    string _said = "";

    async Task Key(KeyboardEventArgs e)
    {
        if (e.CtrlKey || e.AltKey || e.MetaKey) return;
        var step = _view.Square / (e.ShiftKey ? 1 : 10);
        switch (e.Key)
        {
            case "ArrowLeft": await Nudge(new(-step, 0)); break;
            case "ArrowRight": await Nudge(new(step, 0)); break;
            case "ArrowUp": await Nudge(new(0, step)); break;
            case "ArrowDown": await Nudge(new(0, -step)); break;
            case "Enter" when Tool != Tool.Move: await PlaceAtCross(); break;
            case "c" or "C": await Take(Tool.Corner); break;
            case "h" or "H": await Take(Tool.Hole); break;
            case "s" or "S": await Take(Tool.Slot); break;
            case "e" or "E": await Take(Tool.Edge); break;
            case "a" or "A": await Take(Tool.Arc); break;
            case "m" or "M": await Take(Tool.Move); break;
            case "+" or "=": Zoom(0.8); break;
            case "-": Zoom(1.25); break;
            case "0": Fit(); break;
            case "n" or "N": await Choose(NextId()); break;
            case "Escape": await Stop(); break;
            case "Delete" when Selected is { } id: await OnRemove.InvokeAsync(id); break;
        }
    }

    async Task Take(Tool tool)
    {
        (_begun, _pendingCorner) = (null, null);
        _said = tool == Tool.Move ? "Moving." : $"{tool}: arrows move the cross, Enter places.";
        await ToolChanged.InvokeAsync(tool);
    }

    async Task Choose(string? id)
    {
        await SelectedChanged.InvokeAsync(id);
        _said = id is not null && _shown.TryGetValue(id, out var s) ? $"{id} chosen, at {Place(s.At)}." : id is null ? "" : $"{id} chosen.";
    }

    async Task Nudge(Vec2 by)
    {
        if (Tool != Tool.Move)
        {
            _cross = Snapped((_cross ?? _view.Middle) + by);
            _said = $"{Place(_cross.Value)}{(Near(_cross.Value, _view.Square / 10) is { } at ? $", {at.Feature.Id}" : "")}";
        }
        else if (Selected is { } id && _shown.TryGetValue(id, out var s) && s.Feature.Kind != FeatureKind.Edge)
        {
            await Moved(id, s.At + by);
            _said = $"{id} at {Place(s.At + by)}";
        }
        else _view = _view.Moved(by);
    }

    /// <summary>A slot and an arc need a second place: the other end, or a point of the arc.</summary>
    async Task PlaceAtCross()
    {
        var at = Snapped(_cross ?? _view.Middle);
        _cross = at;
        if (Tool is Tool.Slot or Tool.Arc && _begun is null)
        {
            _begun = at;
            _said = Tool == Tool.Slot ? "One end. Move to the other end and press Enter." : "Centre. Move to the arc and press Enter.";
            return;
        }
        // Told of what was handed to the page: when the page hands it back as features depends on how busy the browser is.
        var placed = await Place(_begun ?? at, at, _view.Square / 10);
        _begun = null;
        _said = placed.IsEmpty ? $"Corner {_pendingCorner}: go on to the next." : $"{string.Join(" and ", placed.Select(f => f.Id))} placed, at {Place(at)}.";
    }

    async Task Stop()
    {
        (_pendingCorner, _begun) = (null, null);
        await SelectedChanged.InvokeAsync(null);
        await ToolChanged.InvokeAsync(Tool.Move);
    }

    static string Place(Vec2 at) => FormattableString.Invariant($"{at.X:0.#}, {at.Y:0.#}");

    string CrossPath(Vec2 at)
    {
        var r = 14 * PerPixel;
        return FormattableString.Invariant($"M{at.X - r} {-at.Y}H{at.X + r}M{at.X} {-at.Y - r}V{-at.Y + r}");
    }
}
