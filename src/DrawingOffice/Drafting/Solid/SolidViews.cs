using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>
/// Front, plan and end view set out in line, and a pictorial in the free quarter. First angle: the plan stands under the front, the view
/// from the left to the right of it; third angle: the plan over the front, the view from the right to the right of it (ISO 5456-2).
/// </summary>
sealed class SolidViews
{
    // Between views, and the most dimensions that one view bears, mm and count.
    const double Air = 12;
    const int Most = 10;

    readonly ImmutableArray<Mark>.Builder _marks = ImmutableArray.CreateBuilder<Mark>();
    readonly ImmutableArray<SolidDimension>.Builder _dimensions = ImmutableArray.CreateBuilder<SolidDimension>();

    public ImmutableArray<Mark> Marks => _marks.ToImmutable();

    public ImmutableArray<SolidDimension> Dimensions => _dimensions.ToImmutable();

    public Box Bounds { get; private set; } = Box.Nothing;

    public SolidViews(SolidPart part, double scale, Projection projection, Writing writing)
    {
        var first = projection == Projection.FirstAngle;
        Sight[] sights = [Sight.Front with { Scale = scale }, Sight.Above with { Scale = scale }, (first ? Sight.FromLeft : Sight.FromRight) with { Scale = scale }];
        SolidView[] views = [.. sights.Select(s => new SolidView(part, s))];
        Dimension(part, views, writing);
        for (var i = 0; i < views.Length; i++)
        {
            var near = sights[i].Near;
            // A hole is named where it looks at the eye most squarely.
            views[i].Name(r => sights.MaxBy(s => Math.Abs(s.Near.Dot(r.Axis)))!.Near == near);
        }
        var (front, plan, end) = (views[0].Bounds, views[1].Bounds, views[2].Bounds);
        var under = first ? front.Bottom - Air - plan.Top : front.Top + Air - plan.Bottom;
        var beside = Math.Max(front.Right, plan.Right) + Air - end.Left;
        Add(views[0].Marks, front, Vec2.Zero);
        Add(views[1].Marks, plan, new(0, under));
        Add(views[2].Marks, end, new(beside, 0));
        Pictorial(part, scale, new(end.Left + beside, first ? end.Bottom - Air : Math.Max(end.Top, front.Top) + Air), first);
    }

    void Dimension(SolidPart part, SolidView[] views, Writing writing)
    {
        var taken = new HashSet<string>();
        foreach (var view in views)
        {
            var lines = part.Lines.Where(l => view.IsTrue(l) && !taken.Contains(l.Id)).OrderByDescending(l => l.Length!.Value.Value).Take(Most).ToList();
            taken.UnionWith(lines.Select(l => l.Id));
            view.Lengths([.. lines.OrderBy(l => part.Lines.IndexOf(l)).Select(l => (l, Numbered(SolidLists.Words(l), writing.Length(l.Length!.Value.Value, l.Length.Value.Std), l.Length)))]);
        }
        foreach (var pair in part.Pairs.Where(p => p is { Angle: { } a, Apart: null } && Math.Abs(a.Value - Math.PI / 2) > Square))
        {
            var (a, b) = (part.Faces.First(f => f.Id == pair.A), part.Faces.First(f => f.Id == pair.B));
            if (views.FirstOrDefault(v => v.IsTrue(a, b)) is not { } view) continue;
            view.Angle(a, b, Numbered($"{a.Id} to {b.Id}, setting angle", Drafting.Writing.Angle(pair.Angle!.Value.Value), pair.Angle, angle: true));
        }
    }

    const double Square = Drafting.Dimensions.Angles.Square;

    SolidDimension Numbered(string what, string text, Uncertain? value, bool angle = false)
    {
        var next = new SolidDimension(_dimensions.Count + 1, what, text, value, angle);
        _dimensions.Add(next);
        return next;
    }

    void Pictorial(SolidPart part, double scale, Vec2 corner, bool down)
    {
        var marks = SolidPicture.Bare(part, Sight.Isometric with { Scale = scale }, hide: true);
        if (marks.Bounds is not { } box) return;
        Add(marks.Marks, box, corner - new Vec2(box.Left, down ? box.Top : box.Bottom));
    }

    void Add(ImmutableArray<Mark> marks, Box bounds, Vec2 by)
    {
        foreach (var mark in marks) _marks.Add(Shift.By(mark, by));
        Bounds = Bounds.With(new Box(bounds.Left + by.X, bounds.Bottom + by.Y, bounds.Right + by.X, bounds.Top + by.Y));
    }
}
