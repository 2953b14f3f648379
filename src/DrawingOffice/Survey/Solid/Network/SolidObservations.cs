using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>From readings in space to observation equations and weights.</summary>
static class SolidObservations
{
    public static ImmutableArray<SolidObserved> Of(SolidSample sample, SolidLayout layout)
    {
        var rows = ImmutableArray.CreateBuilder<SolidObserved>();
        var least = sample.Readings.Where(r => !r.Exact && !IsAngle(r.Kind)).Select(r => r.Sigma).DefaultIfEmpty(0.02).Min();
        var exact = Observations.ExactShare * least;
        foreach (var r in sample.Readings)
        {
            var sigma = !r.Exact ? r.Sigma : IsAngle(r.Kind) ? exact / layout.Lever : exact;
            foreach (var q in Quantity(layout, r.Kind, layout.IndexOf(r.From), r.To is null ? -1 : layout.IndexOf(r.To), r))
                rows.Add(q with { Value = q.Part == 1 && r.Kind == SolidReadingKind.OnFace ? r.ValueY : r.Value, Sigma = sigma, Reading = r.Index });
        }
        for (var i = 0; i < layout.Features.Length; i++)
        {
            foreach (var q in Belonging(layout, i)) rows.Add(q with { Sigma = exact });
            if (layout.DirectionAt(i) is >= 0 and var at) rows.Add(Row(Form.Length, -1, at) with { Sigma = least });
            if (layout.IsLine(i)) rows.Add(Row(Form.Foot, i, -1) with { Sigma = least });
        }
        for (var k = 0; k < layout.Frames.Length; k++)
        {
            var first = layout.FirstOfFrames + 5 * k;
            rows.Add(Row(Form.Length, -1, first) with { Sigma = least });
            rows.Add(Row(Form.FrameFlat, -1, layout.Frames[k].Plane) with { Spot = first, Sigma = least });
        }
        return rows.ToImmutable();
    }

    /// <summary>What follows from where a feature is said to lie: on a face, or where two faces meet.</summary>
    static IEnumerable<SolidObserved> Belonging(SolidLayout layout, int feature)
    {
        var f = layout.Features[feature];
        if (f.On is not null)
            foreach (var q in On(layout, feature, layout.On(feature))) yield return q;
        if (f.Kind == SolidKind.Edge && f.From is not null && !layout.IsCornered(feature))
        {
            var (a, b) = layout.Corners(feature);
            foreach (var q in On(layout, feature, a).Concat(On(layout, feature, b))) yield return q;
        }
    }

    /// <summary>The equations of a quantity, without value and ±: one, or two for what has two components.</summary>
    public static IEnumerable<SolidObserved> Quantity(SolidLayout layout, SolidReadingKind kind, int from, int to, SolidReading? reading = null)
    {
        var pin = reading?.Pin ?? 0;
        var spot = reading?.At is { } at ? layout.IndexOf(at) : layout.IsLine(from) || layout.IsPlane(from) ? SpotOn(layout, from) : -1;
        switch (kind)
        {
            case SolidReadingKind.Distance: return [Row(Form.Gap, from, to)];
            case SolidReadingKind.OverHoles: return [Row(Form.Gap, from, to) with { Share = 1, Pin = pin }];
            case SolidReadingKind.BetweenHoles: return [Row(Form.Gap, from, to) with { Share = -1, Pin = pin }];
            case SolidReadingKind.LengthAlongEdge:
                var (a, b) = layout.Corners(from);
                return [Row(Form.Gap, a, b)];
            case SolidReadingKind.PointToEdge or SolidReadingKind.AcrossEdges: return [Row(Form.OffLine, from, to) with { Spot = spot }];
            case SolidReadingKind.HoleToEdge: return [Row(Form.OffLine, from, to) with { Share = -1, Pin = pin }];
            case SolidReadingKind.PointToPlane: return [Row(Form.Over, from, to)];
            case SolidReadingKind.NearSideToPlane: return [Row(Form.Over, from, to) with { Share = -1, Pin = pin, Spot = spot }];
            case SolidReadingKind.FarSideToPlane: return [Row(Form.Over, from, to) with { Share = 1, Pin = pin, Spot = spot }];
            case SolidReadingKind.Depth or SolidReadingKind.Thickness: return [Row(Form.Opposite, from, to) with { Spot = spot }];
            case SolidReadingKind.Height when layout.IsPlane(from): return [Row(Form.Opposite, from, to) with { Spot = spot, Signed = true }];
            case SolidReadingKind.Height: return [Row(Form.Over, from, to) with { Signed = true }];
            case SolidReadingKind.HeightOverPin: return [Row(Form.Over, from, to) with { Share = 1, Pin = pin, Spot = spot, Signed = true }];
            case SolidReadingKind.HeightUnderPin: return [Row(Form.Over, from, to) with { Share = -1, Pin = pin, Spot = spot, Signed = true }];
            case SolidReadingKind.Diameter: return [Row(Form.Size, from, -1)];
            case SolidReadingKind.Angle: return [Row(Form.Angle, from, to)];
            case SolidReadingKind.OnFace:
                var frame = layout.FirstOfFrames + 5 * layout.Frames.IndexOf((to, reading!.Frame));
                return [Row(Form.OnFace, from, to) with { Spot = frame }, Row(Form.OnFace, from, to) with { Spot = frame, Part = 1 }];
            case SolidReadingKind.On: return On(layout, from, to);
            default: return Turned(layout, from, to, kind == SolidReadingKind.Parallel);
        }
    }

    static IEnumerable<SolidObserved> On(SolidLayout layout, int from, int to)
    {
        if (layout.IsPlane(to))
        {
            if (layout.IsCornered(from))
            {
                var (a, b) = layout.Corners(from);
                return [Row(Form.Over, a, to) with { Signed = true }, Row(Form.Over, b, to) with { Signed = true, Part = 1 }];
            }
            SolidObserved centre = Row(Form.Over, from, to) with { Signed = true };
            // A line that is not yet in the face is nearer to it in one place than in another: opposite the spot.
            return layout.IsLine(from) ? [centre with { Spot = SpotOn(layout, from) }, Row(Form.Lean, from, to) with { Part = 1 }] : [centre];
        }
        return layout.Kind(to) switch
        {
            SolidKind.Cylinder => [Row(Form.OnSurface, from, to)],
            SolidKind.Hole => [Row(Form.RimFlat, from, to), Row(Form.RimRound, from, to) with { Part = 1 }],
            _ when layout.FaceOfBoth(from, to) is >= 0 and var face => [Row(Form.Aside, from, to) with { Spot = face }],
            _ => [Row(Form.Beside, from, to), Row(Form.Beside, from, to) with { Part = 1 }],
        };
    }

    /// <summary>Directions alike need two equations, directions across one; a line along a face stands across its normal.</summary>
    static IEnumerable<SolidObserved> Turned(SolidLayout layout, int from, int to, bool parallel) =>
        parallel && layout.Kind(from) == SolidKind.Edge && layout.Kind(to) == SolidKind.Edge && layout.FaceOfBoth(from, to) is >= 0 and var face ? [Row(Form.Aside, from, to) with { Spot = face, Part = 1 }]
            : parallel == (layout.IsPlane(from) == layout.IsPlane(to)) ? [Row(Form.Skew, from, to), Row(Form.Skew, from, to) with { Part = 1 }]
            : [Row(Form.Lean, from, to)];

    /// <summary>First point or hole that lies on the face or cylinder, else the first of the sample; −1 where there is none.</summary>
    public static int SpotOn(SolidLayout layout, int feature)
    {
        var first = -1;
        for (var i = 0; i < layout.Features.Length; i++)
        {
            if (!layout.HasPlace(i)) continue;
            if (layout.LiesIn(i, feature)) return i;
            if (first < 0) first = i;
        }
        return first;
    }

    static SolidObserved Row(Form form, int from, int to) => new(form, from, to, -1, 0, 0, 0, 1, -1, 0, false);

    public static bool IsAngle(SolidReadingKind kind) => kind is SolidReadingKind.Angle or SolidReadingKind.Parallel or SolidReadingKind.Square;

    public static bool IsCondition(SolidReadingKind kind) => kind is SolidReadingKind.On or SolidReadingKind.Parallel or SolidReadingKind.Square;

    /// <summary>The size of the part as the readings show it, mm.</summary>
    public static double Lever(SolidSample sample) =>
        sample.Readings.Where(r => !IsAngle(r.Kind)).Select(r => Math.Max(Math.Abs(r.Value), Math.Abs(r.ValueY))).DefaultIfEmpty(1).Max() is var most && most > 1 ? most : 1;

    /// <summary>Holes whose own axis something reads.</summary>
    public static IReadOnlySet<string> Turning(SolidSample sample)
    {
        var turning = new HashSet<string>();
        foreach (var r in sample.Readings)
        {
            if (IsAngle(r.Kind)) turning.UnionWith([r.From, r.To!]);
            if (r.Kind == SolidReadingKind.On) turning.Add(r.To!);
        }
        return turning;
    }
}
