using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>Collects marks and remembers where they lie, so that lettering can keep clear of them.</summary>
sealed class Board
{
    readonly ImmutableArray<Mark>.Builder _marks = ImmutableArray.CreateBuilder<Mark>();

    public Clearance Clear { get; } = new();

    public ImmutableArray<Mark> Marks => _marks.ToImmutable();

    public void Add(Mark mark) => _marks.Add(mark);

    public void AddMoved(IEnumerable<Mark> marks, Vec2 by)
    {
        foreach (var mark in marks) _marks.Add(Shift.By(mark, by));
    }

    public void Line(Vec2 a, Vec2 b, string layer, Stroke stroke, Tone tone = Tone.Ink)
    {
        Add(new LineMark(a, b, layer, stroke, tone));
        Clear.Line(a, b);
    }

    public void Text(Vec2 at, string text, double height, string layer = Layers.Text, Anchor anchor = Anchor.Left, double turn = 0, Tone tone = Tone.Ink)
    {
        if (text.Length == 0) return;
        var mark = new TextMark(at, text, height, layer, anchor, turn, tone);
        Add(mark);
        Clear.Block(Letter.Around(mark));
    }

    public void Circle(Vec2 centre, double radius, string layer, Stroke stroke, Tone tone = Tone.Ink)
    {
        Add(new CircleMark(centre, radius, layer, stroke, tone));
        Clear.Disc(centre, radius);
    }

    public void Rectangle(Box box, string layer, Stroke stroke, Tone tone = Tone.Ink) => Add(new PathMark(
        [new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top)],
        Closed: true, Filled: false, layer, stroke, tone));

    /// <summary>A filled arrow head, three times as long as wide, in the manner of ISO 129-1.</summary>
    /// <param name="towards">Direction it points in.</param>
    public void Arrow(Vec2 tip, Vec2 towards, string layer = Layers.Dimensions, Tone tone = Tone.Ink)
    {
        var back = tip - towards.Unit * ArrowLength;
        var side = towards.Unit.Left * (ArrowLength / 6);
        Add(new PathMark([tip, back + side, back - side], Closed: true, Filled: true, layer, Stroke.Dimension, tone));
        Clear.Line(tip, back);
    }

    /// <summary>mm.</summary>
    public const double ArrowLength = 3;
}
