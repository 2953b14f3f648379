using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>A place on an edge of the web's flat, on the flat drawing of the web.</summary>
/// <param name="Along">Direction of the edge, length 1.</param>
/// <param name="Out">Square to it, away from the web.</param>
/// <param name="CurveOut">Its curvature on the sheet, towards Out, 1/mm: the sheet's geodesic curvature, the same flat and formed.</param>
/// <param name="CurveEye">Its curvature square to the sheet once formed, towards the eye, 1/mm.</param>
/// <param name="Twist">How fast the sheet turns about the edge once formed, radians per mm: where an edge runs aslant over a bent web.</param>
readonly record struct EdgePlace(Vec2 At, Vec2 Along, Vec2 Out, double CurveOut, double CurveEye, double Twist);

/// <summary>A stretch of an edge along which nothing changes its law: one straight or arc, in plan and in elevation, between two stations.</summary>
/// <param name="From">Along the edge, mm.</param>
/// <param name="InCrease">It lies in a crease of the web, where the law by the place gives way to a wedge.</param>
readonly record struct EdgePart(double From, double To, int Step, bool InCrease)
{
    public double Middle => (From + To) / 2;
}

/// <summary>A corner of the edge or a crease across it: a wedge of metal that is missing (positive) or left over (negative) once folded, radians.</summary>
/// <param name="Open">The blank itself is open there already: two runs of flange that fold together.</param>
/// <param name="IsCrease">A crease of the web rather than a corner of its edge.</param>
readonly record struct Wedge(double Along, double Angle, bool Open, bool IsCrease);

/// <summary>An edge of the web's flat (its tangent line), with what hangs on it.</summary>
/// <param name="Upper">Else lower.</param>
/// <param name="Marks">How far along each station comes, mm.</param>
/// <param name="Shape">Null: the web ends here in a free edge.</param>
sealed record FoldEdge(bool Upper, Course Line, ImmutableArray<double> Marks, Rail Rail, PlanSheet Plan, SideShape? Shape)
{
    public string Name => Upper ? "upper" : "lower";

    public ImmutableArray<EdgePart> Parts { get; } = EdgeParts.Of(Line, Marks, Plan);

    public ImmutableArray<Wedge> Wedges { get; } = Shape is null ? [] : EdgeParts.Wedges(Line, Plan, Upper, Shape);

    /// <summary>The face lies on this edge's flange or its lip.</summary>
    public bool Owns(RailFace face) => Upper ? face is RailFace.UpperFlange or RailFace.UpperLip : face is RailFace.LowerFlange or RailFace.LowerLip;

    public double AlongAt(double x) => Between.Read(Rail.Stations, s => s.At, Marks, x);

    public double BaseAt(double along) => Between.Read(Marks, Rail.Stations, along, s => s.At);

    public double FlangeAt(double along) => Between.Read(Marks, Rail.Stations, along, s => Upper ? s.Upper : s.Lower);

    public double LipAt(double along) => Between.Read(Marks, Rail.Stations, along, s => Upper ? s.UpperLip : s.LowerLip);

    /// <summary>From the web's tangent line to the free edge on the flat, mm.</summary>
    public double DevelopedAt(double along) => Shape?.Developed(FlangeAt(along), LipAt(along)) ?? 0;

    public EdgePlace Place(double along) => Place(along, Line.StepAt(along));

    /// <summary>As the given step has it, which tells the two sides of a corner apart.</summary>
    public EdgePlace Place(double along, int step)
    {
        var (s, l) = (Line.Steps[step], along - Line.StartOf(step));
        var (at, way) = (s.At(l), s.AlongAt(l));
        var bent = Plan.CurvatureAt(at.X);
        return new(at, way, Upper ? way.Left : -way.Left, Upper ? s.Curvature : -s.Curvature, bent * way.X * way.X, bent * way.X * way.Y);
    }
}

/// <summary>Straight-line reading of a table; the end pieces go on beyond it.</summary>
static class Between
{
    public static double Read(ImmutableArray<Station> stations, Func<Station, double> x, ImmutableArray<double> y, double at)
    {
        var k = 0;
        while (k < stations.Length - 2 && at > x(stations[k + 1])) k++;
        return Line(at, x(stations[k]), x(stations[k + 1]), y[k], y[k + 1]);
    }

    public static double Read(ImmutableArray<double> x, ImmutableArray<Station> stations, double at, Func<Station, double> y)
    {
        var k = 0;
        while (k < x.Length - 2 && at > x[k + 1]) k++;
        return Line(at, x[k], x[k + 1], y(stations[k]), y(stations[k + 1]));
    }

    // Exact at both ends.
    static double Line(double at, double x0, double x1, double y0, double y1)
    {
        var t = (at - x0) / (x1 - x0);
        return y0 * (1 - t) + y1 * t;
    }
}
