using QRCoder;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Tags;

/// <summary>A QR code (ISO/IEC 18004) as marks: filled rectangles in mm, no bitmap.</summary>
public static class QrCode
{
    /// <summary>Light modules that must stand clear all round (ISO/IEC 18004, 5.3.8).</summary>
    public const int QuietZone = 4;

    /// <summary>
    /// Smallest module that is printed, mm. Common practice: four dots of a 300 dpi printer, which a phone reads at arm's length.
    /// </summary>
    public const double SmallestModule = 0.34;

    /// <summary>Longest text, bytes as UTF-8: beyond it a small label cannot hold the code.</summary>
    public const int LongestText = 120;

    /// <summary>Dark modules, by row from the top and column from the left. Error correction M: about 15 % of the code may be lost.</summary>
    public static bool[][] Matrix(string text)
    {
        if (text.Length == 0 || System.Text.Encoding.UTF8.GetByteCount(text) > LongestText)
            throw new RefusedException(Refusal.Of("text of the code", text, $"give 1 to {LongestText} bytes"));
        using var data = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var rows = data.ModuleMatrix;
        return [.. rows.Skip(QuietZone).SkipLast(QuietZone).Select(r => r.Cast<bool>().Skip(QuietZone).SkipLast(QuietZone).ToArray())];
    }

    /// <summary>The code in a square, quiet zone within.</summary>
    /// <param name="lower">Lower left corner of the square, mm.</param>
    /// <param name="side">Of the square, mm.</param>
    /// <exception cref="RefusedException">The modules would be smaller than <see cref="SmallestModule"/>.</exception>
    public static IEnumerable<Mark> Draw(string text, Vec2 lower, double side)
    {
        var matrix = Matrix(text);
        var module = side / (matrix.Length + 2 * QuietZone);
        if (module < SmallestModule)
            throw new RefusedException(Refusal.Of("code's size", $"{Figures.Of(side, 1)} mm",
                $"this text needs {Figures.Of(SmallestModule * (matrix.Length + 2 * QuietZone), 1)} mm; take a larger label or a shorter address"));
        return matrix.SelectMany((row, i) => Runs(row).Select(run => Bar(run, i, matrix.Length, lower, module)));
    }

    static IEnumerable<(int From, int To)> Runs(bool[] row)
    {
        for (var i = 0; i < row.Length; i++)
        {
            if (!row[i]) continue;
            var from = i;
            while (i < row.Length && row[i]) i++;
            yield return (from, i);
        }
    }

    static PathMark Bar((int From, int To) run, int row, int size, Vec2 lower, double module)
    {
        var (left, right) = (lower.X + (QuietZone + run.From) * module, lower.X + (QuietZone + run.To) * module);
        var top = lower.Y + (QuietZone + size - row) * module;
        return new([new(left, top - module), new(right, top - module), new(right, top), new(left, top)], true, true, Layers.Text, Stroke.Outline);
    }
}
