using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>Something cut right through one face.</summary>
/// <param name="Id">Unique on the part.</param>
public abstract record Opening(string Id)
{
    /// <summary>Its outline, anticlockwise, mm.</summary>
    public abstract Loop Edge { get; }

    public abstract Opening Moved(Pose2 pose);
}

/// <param name="Diameter">mm, positive.</param>
public sealed record RoundHole(string Id, Vec2 At, double Diameter) : Opening(Id)
{
    public override Loop Edge => Loop.Circle(At, Diameter / 2);

    public override Opening Moved(Pose2 pose) => this with { At = pose.Map(At) };
}

/// <summary>A slot with round ends.</summary>
/// <param name="At">Its middle.</param>
/// <param name="Width">mm, positive.</param>
/// <param name="Length">Over the round ends, mm, more than the width.</param>
/// <param name="Turn">Direction of its length, radians from x.</param>
public sealed record Slot(string Id, Vec2 At, double Width, double Length, double Turn) : Opening(Id)
{
    /// <summary>From the middle to an end centre.</summary>
    public Vec2 Half => Vec2.Polar(Turn, (Length - Width) / 2);

    public override Loop Edge
    {
        get
        {
            var side = Half.Unit.Left * (Width / 2);
            return new([new(At + Half - side, 1), new(At + Half + side), new(At - Half + side, 1), new(At - Half - side)]);
        }
    }

    public override Opening Moved(Pose2 pose) => this with { At = pose.Map(At), Turn = Turn + pose.X.Angle };
}

/// <summary>A cut-out of any outline, anticlockwise.</summary>
public sealed record CutOut(string Id, Loop Outline) : Opening(Id)
{
    public override Loop Edge => Outline;

    public override Opening Moved(Pose2 pose) => this with { Outline = Outline.Moved(pose) };
}

/// <summary>
/// A flat face between its bends' tangent lines (where the flat ends and the bend begins), in its own frame: seen from the upper
/// side of the sheet, mm, anticlockwise. A face that is folded on has the tangent line of that bend on its x axis and its metal at y ≥ 0
/// there; its origin is at the end (<see cref="Bend.To"/>) of the bend line on the parent.
/// </summary>
/// <param name="Id">Unique on the part.</param>
public sealed record Face(string Id, Loop Outline, ImmutableArray<Opening> Openings)
{
    /// <summary>Metal in the face, mm².</summary>
    public double Area => Outline.Area - Openings.Sum(o => o.Edge.Area);
}

/// <summary>
/// A straight bend between two faces.
/// </summary>
/// <param name="From">Where the bend begins on a straight side of the parent, walking it anticlockwise; parent's frame, mm.</param>
/// <param name="To">Where it ends on the same side.</param>
/// <param name="Angle">From flat, radians in [−π, π], not 0: positive folds the child up, towards the side the drawing shows.</param>
/// <param name="InsideRadius">On the hollow side, mm, at least 0.</param>
public sealed record Bend(string Parent, Vec2 From, Vec2 To, string Child, double Angle, double InsideRadius)
{
    /// <summary>mm.</summary>
    public double Length => From.DistanceTo(To);

    /// <summary>Direction along the bend line.</summary>
    public Vec2 Along => (To - From).Unit;

    /// <summary>Square to the bend line, away from the parent.</summary>
    public Vec2 Out => -Along.Left;
}
