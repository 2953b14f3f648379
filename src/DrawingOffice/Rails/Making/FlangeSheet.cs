using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>
/// A flange as a piece of its own, laid flat: its inner edge is the web's outside edge, bent on the flat as it is within the flange when formed
/// (geodesic curvature), so that it takes its place without strain. Exact where the flange unrolls.
/// </summary>
/// <param name="Line">The inner edge on the flat, the flange to its left.</param>
/// <param name="OnWeb">Where its law changes along the web's edge, mm, and <paramref name="OnSheet"/> along the inner edge on the flat.</param>
sealed record FlangeSheet(FoldEdge Edge, FoldEdge Line, ImmutableArray<double> OnWeb, ImmutableArray<double> OnSheet)
{
    public static FlangeSheet Of(FoldEdge edge)
    {
        var shape = edge.Shape!;
        var steps = ImmutableArray.CreateBuilder<Step>();
        var marks = ImmutableArray.CreateBuilder<double>();
        var (onWeb, onSheet) = (new List<double> { 0 }, new List<double> { 0 });
        marks.Add(0);
        var (at, heading, along, k) = (Vec2.Zero, 0.0, 0.0, 0);
        var (o, e) = InnerEdge(shape);
        foreach (var part in edge.Parts)
        {
            while (k < edge.Wedges.Length && edge.Wedges[k].Along < part.Middle) heading += TurnOf(edge.Wedges[k++], shape);
            if (!part.InCrease)
            {
                var place = edge.Place(part.Middle, part.Step);
                var rate = 1 - place.CurveOut * o - place.CurveEye * e;
                var bent = (place.CurveOut * Math.Cos(shape.Angle) + place.CurveEye * shape.Towards * Math.Sin(shape.Angle)) / rate;
                var step = new Step(at, heading, (part.To - part.From) * rate, bent);
                steps.Add(step);
                (at, heading, along) = (step.To, step.EndHeading, along + step.Length);
            }
            onWeb.Add(part.To);
            onSheet.Add(along);
            if (Math.Abs(part.To - edge.Marks[marks.Count]) < 1e-6) marks.Add(along);
            if (marks.Count == edge.Marks.Length) break;
        }
        var sheet = new PlanSheet(new([new(Vec2.Zero, 0, along, 0)]), [along], [false]);
        return new(edge, new FoldEdge(true, new(Smooth(steps)), marks.ToImmutable(), edge.Rail, sheet, null), [.. onWeb], [.. onSheet]);
    }

    /// <summary>Where the inner edge stands from the web's tangent line: a setback before the flange's flat begins, in the flange's middle layer, mm.</summary>
    static (double Out, double Eye) InnerEdge(SideShape shape)
    {
        var (o, e, turned) = shape.At(shape.Allowance, double.MaxValue);
        return (o - shape.Setback * Math.Cos(turned), e - shape.Setback * Math.Sin(turned));
    }

    /// <summary>How far the inner edge turns towards the flange at a corner: a crease of the web wholly, a corner of the web by the share that lies in the flange.</summary>
    static double TurnOf(Wedge w, SideShape shape) => w.IsCrease ? -w.Angle : w.Angle * Math.Cos(shape.Angle);

    static ImmutableArray<Step> Smooth(ImmutableArray<Step>.Builder steps)
    {
        var joined = ImmutableArray.CreateBuilder<Step>();
        foreach (var s in steps)
        {
            if (joined.Count > 0 && joined[^1] is var last && Math.Abs(last.Curvature - s.Curvature) < 1e-12 && Math.Abs(last.EndHeading - s.Heading) < 1e-12)
                joined[^1] = last with { Length = last.Length + s.Length };
            else joined.Add(s);
        }
        return joined.ToImmutable();
    }

    double OnEdge(double along) => Read(OnSheet, OnWeb, along);

    static double Read(ImmutableArray<double> x, ImmutableArray<double> y, double at)
    {
        var k = 0;
        while (k < x.Length - 2 && (at > x[k + 1] || x[k + 1] == x[k])) k++;
        return x[k + 1] == x[k] ? y[k] : y[k] + (at - x[k]) / (x[k + 1] - x[k]) * (y[k + 1] - y[k]);
    }

    /// <summary>Over all, lip laid flat, mm.</summary>
    public double WidthAt(double along) => OnEdge(along) is var a ? Edge.DevelopedAt(a) - Edge.Shape!.Allowance + Edge.Shape.Setback : 0;

    /// <summary>To the middle of the lip's fold, mm.</summary>
    public double LipFoldAt(double along) => Edge.FlangeAt(OnEdge(along)) - Edge.Shape!.LipSetback + Edge.Shape.LipAllowance / 2;

    /// <summary>From a place on the web's drawing to one on this piece.</summary>
    public (Vec2 At, Vec2 Along) Place(double alongEdge, double flat)
    {
        var p = Line.Place(Read(OnWeb, OnSheet, alongEdge));
        return (p.At + p.Out * (flat - Edge.Shape!.Allowance + Edge.Shape.Setback), p.Along);
    }
}
