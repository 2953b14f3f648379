using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>A piece of an outline, mm, true size. The next piece begins where this one ends.</summary>
/// <param name="CornerId">The feature at <paramref name="From"/>, when it has a name.</param>
public abstract record Segment(Vec2 From, Vec2 To, string? CornerId = null);

public sealed record LineSegment(Vec2 From, Vec2 To, string? CornerId = null) : Segment(From, To, CornerId);

/// <param name="Sweep">Radians, positive anticlockwise, from −2π to 2π and not 0; ±2π with From = To is a whole circle.</param>
public sealed record ArcSegment(Vec2 From, Vec2 To, Vec2 Centre, double Sweep, string? CornerId = null) : Segment(From, To, CornerId)
{
    /// <summary>What is known of the radius (of a whole circle: the diameter) beside the shape.</summary>
    public Sized? Known { get; init; }

    /// <summary>mm.</summary>
    public double Radius => Centre.DistanceTo(From);
}

/// <summary>A size as measured, with what it was made to.</summary>
/// <param name="Value">Measured, mm.</param>
/// <param name="Std">Standard uncertainty, mm; null when it is not known.</param>
/// <param name="MadeTo">The made-to size as it is called for, e.g. <c>⌀5/16 in</c>.</param>
/// <param name="Wanted">Wanted tolerance, half-width, mm.</param>
public sealed record Sized(double Value, double? Std = null, string? MadeTo = null, double? Wanted = null);

public sealed record RoundHole(string Id, Vec2 Centre, Sized Diameter);

/// <param name="Turn">Direction of the centre line, radians from x.</param>
/// <param name="Between">Distance of the two end centres; the slot is longer by its width.</param>
public sealed record LongHole(string Id, Vec2 Middle, double Turn, Sized Width, Sized Between);

/// <param name="Angle">Turned from flat, radians, positive when the flange comes up towards the reader.</param>
/// <param name="InsideRadius">mm.</param>
public sealed record FoldLine(Vec2 From, Vec2 To, double Angle, double InsideRadius);

/// <summary>A flat part or a blank as it is to be drawn, true size in mm, in the frame its dimensions are taken in.</summary>
/// <param name="Loops">Closed outlines; the first is the outside, the others are cut-outs.</param>
public sealed record FlatPart(ImmutableArray<ImmutableArray<Segment>> Loops)
{
    public ImmutableArray<RoundHole> Holes { get; init; } = [];

    public ImmutableArray<LongHole> Slots { get; init; } = [];

    public ImmutableArray<FoldLine> Folds { get; init; } = [];

    /// <summary>Plain sentences that are printed on the drawing, numbered.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Where dimensions start. Null: see <see cref="Origin"/>, and short rows may be chained.</summary>
    public Datum? Datum { get; init; }

    /// <summary>The sizes are as designed: nothing was measured, and the drawing does not say that it was.</summary>
    public bool Designed { get; init; }

    /// <summary>What a hole's call-out says instead of its own size, by the hole's id; empty leaves its letter alone.</summary>
    public ImmutableDictionary<string, string> Calls { get; init; } = ImmutableDictionary<string, string>.Empty;

    public ImmutableArray<PitchCircle> PitchCircles { get; init; } = [];

    /// <summary>Lines about which the part is even.</summary>
    public ImmutableArray<(Vec2 From, Vec2 To)> MiddleLines { get; init; } = [];

    public Box Bounds => Outlines.Bounds(Loops);

    /// <summary>Where positions are counted from: the datum, else the middle of a round part, else the left bottom corner of the enclosing rectangle.</summary>
    public Vec2 Origin => Datum?.At ?? (Loops[0] is [ArcSegment round] ? round.Centre : new(Bounds.Left, Bounds.Bottom));
}

/// <summary>A circle that hole centres stand on; mm.</summary>
public sealed record PitchCircle(Vec2 Centre, double Radius);

/// <summary>The corner or hole that positions are counted from.</summary>
public sealed record Datum(Vec2 At, string? Id = null);

/// <summary>From one feature to another along a direction (1, 0) or (0, 1); ids are null where a feature has no name.</summary>
/// <param name="Value">Measured, mm.</param>
public readonly record struct Span(string? From, string? To, Vec2 Along, double Value);

/// <summary>What is known beside the shape. Each answer may be null: the drawing then shows a dash.</summary>
public sealed record Knowledge
{
    /// <summary>Standard uncertainty of a span, mm, from the full covariance of the survey.</summary>
    public Func<Span, double?> Std { get; init; } = _ => null;

    /// <summary>The made-to size of a span as it is to be called for.</summary>
    public Func<Span, string?> MadeTo { get; init; } = _ => null;

    /// <summary>Wanted tolerance of a span, half-width, mm.</summary>
    public Func<Span, double?> Wanted { get; init; } = _ => null;
}
