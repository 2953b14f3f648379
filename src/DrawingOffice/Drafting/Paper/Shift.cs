using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>A mark moved without turn or change of size.</summary>
static class Shift
{
    public static Mark By(Mark mark, Vec2 by) => mark switch
    {
        LineMark m => m with { A = m.A + by, B = m.B + by },
        ArcMark m => m with { Centre = m.Centre + by },
        CircleMark m => m with { Centre = m.Centre + by },
        EllipseMark m => m with { Centre = m.Centre + by },
        PathMark m => m with { Points = [.. m.Points.Select(p => p + by)] },
        TextMark m => m with { At = m.At + by },
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark.GetType().Name),
    };
}
