using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Picture;

/// <summary>The features of a plan as lines.</summary>
sealed class PlanShape
{
    readonly Plan _plan;
    readonly Sample _sample;
    readonly Dictionary<string, Placed> _places;

    public PlanShape(Plan plan, Sample sample)
    {
        (_plan, _sample) = (plan, sample);
        _places = plan.Features.ToDictionary(f => f.Id);
        foreach (var f in plan.Features)
        {
            if (!double.IsFinite(f.At.X + f.At.Y)) throw new RefusedException(Refusal.Of($"place of {f.Id}", $"({f.At.X}, {f.At.Y})", "a finite place in mm is needed"));
        }
    }

    public Box Bounds => _plan.Features.Aggregate(Box.Nothing, (box, f) => box.With(new Box(f.At.X, f.At.Y, f.At.X, f.At.Y).Grown(Reach(f))));

    static double Reach(Placed f) => f.Kind switch
    {
        FeatureKind.Hole => (f.Size?.Value ?? 0) / 2,
        FeatureKind.Slot => ((f.Size?.Value ?? 0) + (f.Length?.Value ?? 0)) / 2,
        _ => 0,
    };

    public void Draw(Board board, View view)
    {
        foreach (var f in _plan.Features)
        {
            switch (f.Kind)
            {
                case FeatureKind.Point:
                    Cross(board, view.At(f.At));
                    break;
                case FeatureKind.Hole:
                    board.Circle(view.At(f.At), (f.Size?.Value ?? 0) / 2 * view.Scale, Layers.Holes, f.Loose ? Stroke.Hidden : Stroke.Outline);
                    break;
                case FeatureKind.Slot:
                    Slot(board, view, f);
                    break;
                case FeatureKind.Edge:
                    Edge(board, view, f);
                    break;
                default:
                    Arc(board, view, f);
                    break;
            }
        }
    }

    (Vec2 From, Vec2 To)? Ends(Placed f)
    {
        var sketched = _sample.Features.FirstOrDefault(s => s.Id == f.Id);
        return sketched is { From: { } a, To: { } b } && _places.TryGetValue(a, out var from) && _places.TryGetValue(b, out var to) ? (from.At, to.At) : null;
    }

    static void Cross(Board board, Vec2 at)
    {
        foreach (var way in new Vec2[] { new(1, 1), new(1, -1) }) board.Line(at - way, at + way, Layers.Outline, Stroke.Thin);
    }

    static void Slot(Board board, View view, Placed f)
    {
        var (middle, along, radius) = (view.At(f.At), Vec2.Polar(f.Turn), (f.Size?.Value ?? 0) / 2 * view.Scale);
        var half = (f.Length?.Value ?? 0) / 2 * view.Scale;
        foreach (var way in new[] { along, -along })
        {
            board.Add(new ArcMark(middle + way * half, radius, way.Angle - Math.PI / 2, Math.PI, Layers.Holes, Stroke.Outline));
            board.Clear.Disc(middle + way * half, radius);
            board.Line(middle + way * half + way.Left * radius, middle - way * half + way.Left * radius, Layers.Holes, Stroke.Outline);
        }
    }

    void Edge(Board board, View view, Placed f)
    {
        // A free edge has no ends: it is drawn a little way to each side of its foot.
        var (a, b) = Ends(f) ?? (f.At - Vec2.Polar(f.Turn, 20 / view.Scale), f.At + Vec2.Polar(f.Turn, 20 / view.Scale));
        board.Line(view.At(a), view.At(b), Layers.Outline, f.Loose ? Stroke.Hidden : Stroke.Outline);
    }

    void Arc(Board board, View view, Placed f)
    {
        var radius = (f.Size?.Value ?? 0) * view.Scale;
        var centre = view.At(f.At);
        var (start, sweep) = (0.0, 2 * Math.PI);
        if (Ends(f) is { } ends)
        {
            // The shorter way round: an arc edge past a half circle would need a point on it to say so.
            start = (ends.From - f.At).Angle;
            sweep = Math.IEEERemainder((ends.To - f.At).Angle - start, 2 * Math.PI);
        }
        board.Add(new ArcMark(centre, radius, start, sweep, Layers.Outline, Ends(f) is null ? Stroke.Hidden : Stroke.Outline));
        board.Clear.Chain([.. Enumerable.Range(0, 25).Select(i => centre + Vec2.Polar(start + sweep * i / 24, radius))], closed: false);
        Cross(board, centre);
    }
}
