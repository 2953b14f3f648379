using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Shapes;

public static class Move
{
    /// <summary>The mark shifted, mm.</summary>
    public static Mark By(Mark mark, Vec2 by) => mark switch
    {
        LineMark m => m with { A = m.A + by, B = m.B + by },
        ArcMark m => m with { Centre = m.Centre + by },
        CircleMark m => m with { Centre = m.Centre + by },
        EllipseMark m => m with { Centre = m.Centre + by },
        PathMark m => m with { Points = m.Points.IsDefault ? [] : [.. m.Points.Select(p => p + by)] },
        TextMark m => m with { At = m.At + by },
        _ => throw new ArgumentException($"A mark of a kind unknown to the print room: {mark.GetType().Name}"),
    };
}
