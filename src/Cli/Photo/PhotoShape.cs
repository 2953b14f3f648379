using WitnessMark.DrawingOffice.Photo;
using WitnessMark.FrontOffice.MeasurePhoto;

namespace WitnessMark.Cli.Photo;

/// <summary>A photograph made true, as JSON: mm, px and radians; std is one standard deviation.</summary>
static class PhotoShape
{
    public static object Of(PhotoResult made, IReadOnlyList<string> files)
    {
        var photo = made.Photo;
        return new
        {
            made.Request.Name,
            WidthPx = made.Request.Raster.Width,
            HeightPx = made.Request.Raster.Height,
            Target = photo.Target?.Name,
            MarksFound = photo.Marks.Count(m => m.Used),
            MarksSetAside = photo.Marks.Count(m => !m.Used),
            ResidualMm = photo.Residual,
            Lens = photo.Camera.Lens.ToString().ToLowerInvariant(),
            photo.LensWords,
            Camera = photo.Stand is { } stand ? new { AboveMm = stand.Above.Value, AboveStdMm = stand.Above.Std, TiltRad = stand.Tilt, FocalPx = stand.Focal.Value, FocalStdPx = stand.Focal.Std, FocalFrom = stand.From.ToString().ToLowerInvariant() } : null,
            LargerPerMm = made.LargerPerMm,
            ScaleStd = photo.Scale.Std,
            photo.Print.Measured,
            Holes = made.Seen.Where(s => s.Hole is not null).Select(s => new
            {
                s.Pick.Name,
                Centre = Spot(s.Hole!.Centre),
                DiameterMm = s.Hole.Diameter.Value,
                DiameterStdMm = s.Hole.Diameter.Std,
                ScatterMm = s.Hole.Scatter,
                s.Hole.Share,
            }),
            Corners = made.Seen.Where(s => s.Corner is not null).Select(s => new { s.Pick.Name, Place = Spot(s.Corner!.Value) }),
            Outlines = made.Seen.Where(s => s.Outline is not null).Select(s => new
            {
                s.Pick.Name,
                s.Outline!.Closed,
                Sides = s.Outline.Sides.Select(side => new
                {
                    From = Spot(side.From),
                    To = Spot(side.To),
                    Centre = side.Centre is { } centre ? Spot(centre) : null,
                    RadiusMm = side.Radius?.Value,
                    RadiusStdMm = side.Radius?.Std,
                    DirectionRad = side.Direction.Value,
                    DirectionStdRad = side.Direction.Std,
                    ScatterMm = side.Scatter,
                }),
            }),
            NotFound = made.Seen.Where(s => s.Why is not null).Select(s => new { s.Pick.Name, s.Why }),
            made.Cautions,
            Files = files,
        };
    }

    static object Spot(Spot spot) => new { XMm = spot.At.X, YMm = spot.At.Y, StdXMm = spot.Spread.StdX, StdYMm = spot.Spread.StdY, Outside = spot.Outside };
}
