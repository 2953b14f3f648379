using System.Collections.Immutable;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>A solid's features as lines in space.</summary>
static class SolidWires
{
    /// <summary>mm: more than a measured corner lies off its face, less than sheet that would be seen edge-on.</summary>
    public const double Lift = 0.5;

    /// <summary>Loose features are dashed in the warning tone: where they are drawn is no more than their sketch.</summary>
    public static ImmutableArray<Mark> Draw(SolidPart part, Sight sight, bool hide) =>
        WireDrawing.Draw(Of(part), hide ? part.Faces.Where(f => f.Outline.Length > 2 && !f.Loose).Select(f => new Facet([f.Outline])) : [], sight, Lift);

    static IEnumerable<Wire> Of(SolidPart part) =>
    [
        .. part.Lines.Select(l => Wire.Line(l.A, l.B, Layers.Outline, Stroked(l.Loose), Toned(l.Loose))),
        .. part.Rounds.Where(r => SolidPart.Radius(r) > 0).SelectMany(Round),
    ];

    static IEnumerable<Wire> Round(SolidRound r)
    {
        var (half, radius) = (r.Axis * (r.Long / 2), SolidPart.Radius(r));
        if (r.Long == 0) return [Wire.Circle(new(r.Centre, r.Axis, radius), Layers.Holes, Stroked(r.Loose), Toned(r.Loose))];
        var rim = Wire.Circle(new(r.Centre - half, r.Axis, radius), Layers.Outline, Stroked(r.Loose), Toned(r.Loose));
        var quarter = rim.Points.Length / 4;
        return
        [
            rim, Wire.Circle(new(r.Centre + half, r.Axis, radius), Layers.Outline, Stroked(r.Loose), Toned(r.Loose)),
            .. Enumerable.Range(0, 4).Select(i => rim.Points[i * quarter]).Select(p => Wire.Line(p, p + half * 2, Layers.Outline, Stroke.Thin, Toned(r.Loose))),
        ];
    }

    static Stroke Stroked(bool loose) => loose ? Stroke.Hidden : Stroke.Outline;

    static Tone Toned(bool loose) => loose ? Tone.Warn : Tone.Ink;
}
