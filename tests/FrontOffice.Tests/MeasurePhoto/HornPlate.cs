using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.MeasurePhoto;

/// <summary>
/// The horn's plate of the demonstration van, as true as a computer can say it: 120 by 70 mm, corners of 10 mm radius but for one cut off
/// square to its diagonal, three bolt holes and a large one. mm, from the middle of the plate.
/// </summary>
static class HornPlate
{
    public const double Width = 120, Height = 70, Corner = 10, CutOff = 20, Thickness = 1.6;

    public static readonly (string Name, Vec2 At, double Diameter)[] Holes =
        [("H1", new(-45, 20), 8.7), ("H2", new(-45, -20), 8.7), ("H3", new(42, -18), 8.7), ("H4", new(5, 0), 32)];

    /// <summary>Where it lies on the sheet.</summary>
    public static readonly Vec2 Place = new(6, -12);

    public const double Turn = 7 * Math.PI / 180;

    public static Vec2 OnSheet(Vec2 plate) => Place + plate.Turned(Turn);

    /// <summary>Metal at this place of the sheet.</summary>
    public static bool Covers(Vec2 sheet)
    {
        var p = (sheet - Place).Turned(-Turn);
        var (x, y) = (Math.Abs(p.X) - (Width / 2 - Corner), Math.Abs(p.Y) - (Height / 2 - Corner));
        if (x > Corner || y > Corner) return false;
        if (p is { X: > 0, Y: > 0 })
        {
            if (p.X + p.Y > Width / 2 + Height / 2 - CutOff) return false;
        }
        else if (x > 0 && y > 0 && x * x + y * y > Corner * Corner) return false;
        foreach (var (_, at, d) in Holes)
            if ((p - at).Length < d / 2) return false;
        return true;
    }
}
