using System.Collections.Immutable;
using WitnessMark.FrontOffice.MarkPicture;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.Stores.Album.One;

/// <summary>The pen in hand, and the places of a line that is not finished.</summary>
/// <param name="Kind">Null looks and draws nothing.</param>
public sealed record Drawing(StrokeKind? Kind, Ink Ink, int Weight, string Text, ImmutableArray<Vec2> Begun)
{
    public static Drawing None { get; } = new(null, Ink.Red, 2, "", []);

    /// <summary>A place was picked: the line it finishes, or none yet.</summary>
    public (Drawing Next, Stroke? Done) Picked(Vec2 place) => Kind switch
    {
        null => (this, null),
        StrokeKind.Words when string.IsNullOrWhiteSpace(Text) => (this with { Begun = [place] }, null),
        StrokeKind.Words => (this with { Begun = [], Text = "" }, new(StrokeKind.Words, Ink, Weight, [place], Text.Trim())),
        StrokeKind.Pen => (this with { Begun = Begun.Add(place) }, null),
        _ when Begun.IsEmpty => (this with { Begun = [place] }, null),
        _ when Begun[0].DistanceTo(place) < 1e-3 => (this, null),
        _ => (this with { Begun = [] }, new(Kind.Value, Ink, Weight, [Begun[0], place])),
    };

    /// <summary>A finger was drawn along; a touch without a way picks its place.</summary>
    public (Drawing Next, Stroke? Done) Drawn(ImmutableArray<Vec2> way)
    {
        if (Kind is StrokeKind.Words) return Picked(way[^1]);
        var touch = way.All(p => p.DistanceTo(way[0]) < Touch);
        return Kind switch
        {
            null => (this, null),
            StrokeKind.Pen => (this with { Begun = [] }, Stroke.Pen(Ink, Weight, way)),
            _ when touch => Picked(way[^1]),
            _ => (this with { Begun = [] }, new(Kind.Value, Ink, Weight, [way[0], way[^1]])),
        };
    }

    /// <summary>The line through the places picked so far, or the words where they were to stand.</summary>
    public (Drawing Next, Stroke? Done) Finished() => Kind switch
    {
        StrokeKind.Pen when !Begun.IsEmpty => (this with { Begun = [] }, Stroke.Pen(Ink, Weight, Begun)),
        StrokeKind.Words when !Begun.IsEmpty => Picked(Begun[0]),
        _ => (this with { Begun = [] }, null),
    };

    /// <summary>A part of the picture's width.</summary>
    const double Touch = 0.008;
}
