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
        _ => throw Unknown(mark),
    };

    /// <summary>The mark so many times as large about the origin, lettering too; a path's own pen stays as wide as it is.</summary>
    public static Mark Scaled(Mark mark, double times) => mark switch
    {
        LineMark m => m with { A = m.A * times, B = m.B * times },
        ArcMark m => m with { Centre = m.Centre * times, Radius = m.Radius * times },
        CircleMark m => m with { Centre = m.Centre * times, Radius = m.Radius * times },
        EllipseMark m => m with { Centre = m.Centre * times, HalfA = m.HalfA * times, HalfB = m.HalfB * times },
        PathMark m => m with { Points = m.Points.IsDefault ? [] : [.. m.Points.Select(p => p * times)] },
        TextMark m => m with { At = m.At * times, Height = m.Height * times },
        _ => throw Unknown(mark),
    };

    static ArgumentException Unknown(Mark mark) => new($"A mark of a kind unknown to the print room: {mark.GetType().Name}");
}
