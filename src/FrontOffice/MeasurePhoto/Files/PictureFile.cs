using WitnessMark.DrawingOffice.Photo;
using WitnessMark.FrontOffice.MeasurePhoto.Files.Png;
using WitnessMark.Maths;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.FrontOffice.MeasurePhoto.Files;

/// <summary>A picture file as pixels, set upright, with what the camera tells of its lens.</summary>
/// <param name="Focal35">mm as on 36 × 24 mm film; null where it is not told.</param>
public sealed record PictureFile(Raster Raster, double? Focal35)
{
    /// <summary>Measured in: more pixels gain nothing and fill a phone's memory.</summary>
    public const long MostPixels = 40_000_000;

    /// <summary>JPEG and PNG. Size and kind are looked at before any pixel is made; see <see cref="PictureHead.Read"/> for what is refused.</summary>
    public static Parsed<PictureFile> Read(byte[] file)
    {
        var told = PictureHead.Read(file, MostPixels);
        if (told.Refusal is { } refused) return refused;
        var head = told.Value;
        var read = head.Format switch
        {
            PictureFormat.Jpeg => JpegReader.Read(file, head),
            PictureFormat.Png => PngReader.Read(file, head),
            _ => Refusal.Of("picture", "a WebP picture", "save it as JPEG or PNG first; in the app it can be used as it is"),
        };
        return read.Refusal is { } broken ? broken : new PictureFile(Upright.Of(read.Value, head.Turn), head.Focal35);
    }

    /// <summary>A PNG that carries its scale and nothing else.</summary>
    /// <param name="perMm">Pixels per mm.</param>
    public static byte[] Png(Raster raster, double perMm) => PngWriter.Write(raster, perMm);
}
