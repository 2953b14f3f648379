using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Picture;

/// <summary>From the part's mm to the picture's.</summary>
sealed record View(double Scale, Vec2 Shift)
{
    public Vec2 At(Vec2 p) => p * Scale + Shift;

    public static View Fitting(Box shape, Box room)
    {
        // A single point has no size to fit.
        var (width, height) = (Math.Max(shape.Width, 1e-3), Math.Max(shape.Height, 1e-3));
        var scale = Math.Min(Math.Min(room.Width / width, room.Height / height), 20);
        return new(scale, room.Middle - shape.Middle * scale);
    }
}
