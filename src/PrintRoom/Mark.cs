using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom;

/// <summary>
/// Line types in the manner of ISO 128: what a stroke means, not how wide it is in one output (<see cref="Pens"/> says that).
/// Cut is where a cutter or snips go: continuous and wide, like an outline.
/// </summary>
public enum Stroke { Outline, Thin, Hidden, Centre, Fold, Dimension, Cut }

/// <summary>What a mark says beyond its shape. Colour follows from it on a screen; paper and cutter stay black.</summary>
public enum Tone { Ink, Quiet, Warn, Accent }

/// <summary>One thing drawn, mm, y up. A layer is a plain word (see <see cref="Layers"/>) that DXF and SVG keep.</summary>
public abstract record Mark(string Layer, Stroke Stroke, Tone Tone = Tone.Ink);

public sealed record LineMark(Vec2 A, Vec2 B, string Layer, Stroke Stroke, Tone Tone = Tone.Ink) : Mark(Layer, Stroke, Tone);

/// <param name="Start">Radians from the x axis.</param>
/// <param name="Sweep">Radians, positive anticlockwise; ±2π is a whole circle.</param>
public sealed record ArcMark(Vec2 Centre, double Radius, double Start, double Sweep, string Layer, Stroke Stroke, Tone Tone = Tone.Ink) : Mark(Layer, Stroke, Tone);

public sealed record CircleMark(Vec2 Centre, double Radius, string Layer, Stroke Stroke, Tone Tone = Tone.Ink) : Mark(Layer, Stroke, Tone);

/// <summary>An ellipse, as for a ± drawn round a point. Half-axes in mm; <paramref name="Turn"/> of the first in radians.</summary>
public sealed record EllipseMark(Vec2 Centre, double HalfA, double HalfB, double Turn, string Layer, Stroke Stroke, Tone Tone = Tone.Ink) : Mark(Layer, Stroke, Tone);

/// <param name="Filled">The inside is filled and its edge not drawn, as an arrowhead.</param>
/// <param name="PenWidth">mm, continuous; 0 leaves the pen to the stroke.</param>
public sealed record PathMark(ImmutableArray<Vec2> Points, bool Closed, bool Filled, string Layer, Stroke Stroke, Tone Tone = Tone.Ink, double PenWidth = 0) : Mark(Layer, Stroke, Tone);

public enum Anchor { Left, Middle, Right }

/// <summary>Lettering: capital height in mm, baseline through <paramref name="At"/>, turned anticlockwise by radians.</summary>
public sealed record TextMark(Vec2 At, string Text, double Height, string Layer, Anchor Anchor = Anchor.Left, double Turn = 0, Tone Tone = Tone.Ink) : Mark(Layer, Stroke.Thin, Tone);

/// <summary>The layer names that outputs keep apart.</summary>
public static class Layers
{
    public const string Outline = "OUTLINE";
    public const string Holes = "HOLES";
    public const string Bends = "BENDS";
    public const string Text = "TEXT";
    public const string Dimensions = "DIMENSIONS";
    public const string Centre = "CENTRE";
    public const string Hidden = "HIDDEN";
    public const string Frame = "FRAME";
    public const string Check = "CHECK";

    /// <summary>Scribed or pricked, never cut.</summary>
    public const string Witness = "WITNESS";
}

/// <summary>A sheet of paper or a piece of flat stock with what is drawn on it; origin bottom left, mm.</summary>
public sealed record Sheet(string Title, double Width, double Height, ImmutableArray<Mark> Marks);
