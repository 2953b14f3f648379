using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>To what a person's lengths across a bend run.</summary>
public enum MeasuredTo
{
    /// <summary>To where the outside surfaces of two faces would meet (mould lines); beyond 90° to the outermost part of the bend.</summary>
    Outside,

    /// <summary>To where the inside surfaces would meet; beyond 90° to the innermost part of the bend.</summary>
    Inside,

    /// <summary>To the tangent lines, where the flat ends and the bend begins.</summary>
    Tangent,
}

/// <summary>A corner as written, mm; a radius rounds it.</summary>
public readonly record struct WrittenCorner(Vec2 At, double Radius = 0);

/// <summary>A cut-out as written: corners anticlockwise, mm.</summary>
public sealed record WrittenCutOut(string Id, ImmutableArray<WrittenCorner> Corners);

/// <summary>
/// A face as written. Seen from the upper side; corners anticlockwise, mm. A face that is folded on has the bend at the bottom: its x axis is
/// the line the lengths are measured to, x = 0 at the end of the parent's side.
/// </summary>
public sealed record WrittenFace(string Id, ImmutableArray<WrittenCorner> Corners, ImmutableArray<Opening> Holes, ImmutableArray<WrittenCutOut> CutOuts);

/// <summary>A bend as written.</summary>
/// <param name="Side">Side of the parent, from 1: side n runs from corner n to the next.</param>
/// <param name="Start">Along that side from its first corner, mm; null: its beginning.</param>
/// <param name="End">Along that side, mm; null: its end.</param>
/// <param name="AngleDegrees">From flat, positive up.</param>
/// <param name="InsideRadius">mm.</param>
public sealed record WrittenBend(string Parent, string Child, int Side, double? Start, double? End, double AngleDegrees, double InsideRadius);

/// <summary>A folded part as a person measures and writes it, mm and degrees.</summary>
public sealed record Bracket(string Title, double Thickness, MeasuredTo MeasuredTo, ImmutableArray<WrittenFace> Faces, ImmutableArray<WrittenBend> Bends)
{
    /// <summary>The tree between tangent lines, or the first thing that is wrong.</summary>
    public Parsed<FaceTree> ToFaceTree() => BracketBuilder.Build(this);
}
