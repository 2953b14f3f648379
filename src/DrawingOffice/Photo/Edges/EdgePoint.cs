using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Edges;

/// <summary>One point of an edge: in the picture, on the sheet, the way across the edge toward the light there, and how it moves with the camera.</summary>
/// <param name="Px">px.</param>
/// <param name="Mm">mm on the sheet.</param>
/// <param name="Across">Length 1, on the sheet, from dark to light.</param>
/// <param name="Blur">Of the edge, mm.</param>
/// <param name="ByTheta">mm along <paramref name="Across"/> for a unit of each of the camera's figures.</param>
sealed record EdgePoint(Vec2 Px, Vec2 Mm, Vec2 Across, double Blur, double[] ByTheta)
{
    /// <param name="toLight">The way from dark to light in the picture, length 1.</param>
    /// <param name="blur">px.</param>
    public static EdgePoint Of(Camera camera, Vec2 px, Vec2 toLight, double blur)
    {
        var met = Spots.Meet(camera, px);
        // The edge's direction in the picture, carried to the sheet, and square to it there.
        var along = toLight.Left;
        var across = (met.ByU * along.X + met.ByV * along.Y).Left.Unit;
        var mmPerPx = across.Dot(met.ByU * toLight.X + met.ByV * toLight.Y);
        if (mmPerPx < 0) (across, mmPerPx) = (-across, -mmPerPx);
        var by = new double[Camera.Figures];
        for (var k = 0; k < by.Length; k++) by[k] = across.X * met.XByTheta[k] + across.Y * met.YByTheta[k];
        return new(px, met.At, across, blur * mmPerPx, by);
    }
}
