using System.Buffers.Binary;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace WitnessMark.Web.Client.Stores;

/// <summary>Reads a QR code (ISO/IEC 18004) in a grey picture.</summary>
public static class TagEye
{
    /// <summary>Longest side that is looked at, px; a larger picture is made smaller before.</summary>
    const int LongestSide = 2000;

    /// <param name="picture">Width and height as 32-bit numbers, low byte first, then a byte of brightness for each pixel by rows from the top.</param>
    /// <returns>Null when there is no code, or none that can be read.</returns>
    public static string? Read(byte[] picture)
    {
        if (picture.Length < 8) return null;
        var (width, height) = (BinaryPrimitives.ReadInt32LittleEndian(picture), BinaryPrimitives.ReadInt32LittleEndian(picture.AsSpan(4)));
        if (width is < 1 or > LongestSide || height is < 1 or > LongestSide || picture.Length != 8 + width * height) return null;
        var source = new RGBLuminanceSource(picture[8..], width, height, RGBLuminanceSource.BitmapFormat.Gray8);
        var hints = new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true };
        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)), hints)?.Text;
    }
}
