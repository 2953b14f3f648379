namespace WitnessMark.PrintRoom.Tests;

static class Examples
{
    /// <summary>One mark of each kind on an A4 sheet.</summary>
    public static Sheet Every { get; } = new("Every kind of mark", 210, 297,
    [
        new LineMark(new(20, 20), new(120, 20), Layers.Outline, Stroke.Outline),
        new CircleMark(new(60, 100), 12.5, Layers.Holes, Stroke.Outline),
        new ArcMark(new(120, 100), 30, 0.5, 2, Layers.Bends, Stroke.Fold),
        new EllipseMark(new(150, 200), 8, 3, 0.4, Layers.Centre, Stroke.Centre, Tone.Accent),
        new PathMark([new(20, 200), new(60, 200), new(60, 240)], true, false, Layers.Outline, Stroke.Hidden),
        new PathMark([new(100, 150), new(103, 151), new(103, 149)], true, true, Layers.Dimensions, Stroke.Dimension),
        new TextMark(new(30, 260), "⌀12.7 ±0.05 at 45° 3 5⁄16″", 5, Layers.Text),
    ]);

    /// <summary>A plate 120 × 80 with 10 mm corners, drawn as loose lines and arcs in no order and either direction, and two holes.</summary>
    public static Sheet Plate { get; } = new("Plate", 200, 150,
    [
        new LineMark(new(30, 20), new(130, 20), Layers.Outline, Stroke.Outline),
        new LineMark(new(130, 100), new(30, 100), Layers.Outline, Stroke.Outline),
        new ArcMark(new(130, 30), 10, 0, -Math.PI / 2, Layers.Outline, Stroke.Outline),
        new ArcMark(new(130, 90), 10, 0, Math.PI / 2, Layers.Outline, Stroke.Outline),
        new LineMark(new(20, 90), new(20, 30), Layers.Outline, Stroke.Outline),
        new ArcMark(new(30, 90), 10, Math.PI / 2, Math.PI / 2, Layers.Outline, Stroke.Outline),
        new ArcMark(new(30, 30), 10, -Math.PI / 2, -Math.PI / 2, Layers.Outline, Stroke.Outline),
        new LineMark(new(140, 90), new(140, 30), Layers.Outline, Stroke.Outline),
        new CircleMark(new(40, 40), 4, Layers.Holes, Stroke.Outline),
        new ArcMark(new(120, 80), 6.35, 1, 2 * Math.PI, Layers.Holes, Stroke.Outline),
        new LineMark(new(80, 20), new(80, 100), Layers.Bends, Stroke.Fold),
        new TextMark(new(80, 120), "⌀8 ±0.1, 90° é Ω 100%%", 5, Layers.Text, Anchor.Middle),
    ]);
}
