using System.Globalization;
using System.Text;

namespace WitnessMark.PrintRoom.Tests;

/// <summary>A rendered page: ink from 0 (paper) to 1 (black), rows from the top, and how many pixels there are to a mm.</summary>
sealed record Raster(int Width, int Height, double PerMm, byte[] Grey)
{
    public double Ink(int x, int y) => 1 - Grey[y * Width + x] / 255.0;

    /// <summary>Where runs of ink along one row have their middle, mm from the left; weighed by ink, so finer than a pixel.</summary>
    /// <param name="fromBottom">mm.</param>
    public List<(double Middle, double Ink)> AlongRow(double fromBottom, double from, double to)
    {
        var row = (int)(Height - fromBottom * PerMm);
        return Runs(from, to, i => Ink(i, row));
    }

    /// <summary>The same down one column, mm from the bottom of the page.</summary>
    public List<(double Middle, double Ink)> AlongColumn(double fromLeft, double from, double to)
    {
        var column = (int)(fromLeft * PerMm);
        return Runs(from, to, i => Ink(column, Height - 1 - i));
    }

    List<(double Middle, double Ink)> Runs(double from, double to, Func<int, double> ink)
    {
        var runs = new List<(double, double)>();
        var (sum, moment) = (0.0, 0.0);
        for (var i = (int)(from * PerMm); i < (int)(to * PerMm); i++)
        {
            var dark = ink(i);
            sum += dark;
            moment += dark * (i + 0.5);
            if (dark > 0 || sum == 0) continue;
            runs.Add((moment / sum / PerMm, sum / PerMm));
            (sum, moment) = (0, 0);
        }
        return runs;
    }

    public static Raster FromPgm(byte[] file, double perMm)
    {
        // P5, width, height, 255, one white space, then a byte a pixel.
        var (words, at) = (new List<string>(), 0);
        while (words.Count < 4)
        {
            var end = Array.FindIndex(file, at, b => char.IsWhiteSpace((char)b));
            words.Add(Encoding.ASCII.GetString(file, at, end - at));
            at = end + 1;
        }
        Assert.Equal("P5", words[0]);
        return new(int.Parse(words[1], CultureInfo.InvariantCulture), int.Parse(words[2], CultureInfo.InvariantCulture), perMm, file[at..]);
    }
}
