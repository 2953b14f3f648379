using System.Globalization;

namespace WitnessMark.Stores.Photographs.Files;

/// <summary>The time that stood on the camera when the picture was taken.</summary>
/// <param name="Offset">From UTC; null where the camera does not tell.</param>
public readonly record struct CameraTime(DateTime OnCamera, TimeSpan? Offset)
{
    /// <summary>No picture of this kind of file is older.</summary>
    const int FirstYear = 1990;

    /// <summary>As the notes spell it: 2031:05:28 10:15:00 and +01:00 (Exif 2.31, 4.6.5 and 4.6.6). Null where it is no time.</summary>
    public static CameraTime? Read(string time, string offset) =>
        !DateTime.TryParseExact(time, "yyyy:MM:dd HH:mm:ss", CultureInfo.InvariantCulture, DateTimeStyles.None, out var at) ? null
        : new(at, offset is ['+' or '-', ..] && TimeSpan.TryParseExact(offset[1..], @"hh\:mm", CultureInfo.InvariantCulture, out var by) && by <= TimeSpan.FromHours(14)
            ? offset[0] == '-' ? -by : by : null);

    /// <summary>When that was; null where the camera's clock is plainly wrong: before the first such cameras, or more than a day ahead.</summary>
    /// <param name="now">By this device; its offset serves where the camera tells none.</param>
    public DateTimeOffset? Sane(DateTimeOffset now) => Sane(new DateTimeOffset(OnCamera, Offset ?? now.Offset), now);

    public static DateTimeOffset? Sane(DateTimeOffset at, DateTimeOffset now) => at.Year >= FirstYear && at <= now.AddDays(1) ? at : null;
}
