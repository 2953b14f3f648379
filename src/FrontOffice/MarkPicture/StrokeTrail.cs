using System.Collections.Immutable;

namespace WitnessMark.FrontOffice.MarkPicture;

/// <summary>The strokes now, and those of every step that can be taken back or done again.</summary>
public sealed record StrokeTrail(ImmutableArray<Stroke> Now, ImmutableStack<ImmutableArray<Stroke>> Before, ImmutableStack<ImmutableArray<Stroke>> After)
{
    public static StrokeTrail From(ImmutableArray<Stroke> strokes) => new(strokes, [], []);

    public StrokeTrail Drawn(Stroke stroke) => Stepped(Now.Add(stroke));

    public StrokeTrail Without(int index) => Stepped(Now.RemoveAt(index));

    public StrokeTrail Cleared() => Now.IsEmpty ? this : Stepped([]);

    public StrokeTrail Undone() => Before.IsEmpty ? this : new(Before.Peek(), Before.Pop(), After.Push(Now));

    public StrokeTrail Redone() => After.IsEmpty ? this : new(After.Peek(), Before.Push(Now), After.Pop());

    StrokeTrail Stepped(ImmutableArray<Stroke> next) => new(next, Before.Push(Now), []);
}
