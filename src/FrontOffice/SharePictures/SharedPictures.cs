using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using WitnessMark.Stores.Photographs;

namespace WitnessMark.FrontOffice.SharePictures;

/// <summary>One picture as it goes into a file for others.</summary>
/// <param name="File">Its name there; empty when it was left out.</param>
/// <param name="Part">Its name; empty for the whole vehicle.</param>
/// <param name="Remark">Why it was left out, or that it is the original.</param>
public sealed record SharedPicture(string File, PictureTaken Row, string Part, string Remark = "");

/// <summary>How pictures are named and listed when they leave the house.</summary>
public static class SharedPictures
{
    public const string List = "list.csv";

    /// <summary>By day and number, so that a folder of them lies in order.</summary>
    /// <param name="number">From 1.</param>
    public static string Name(PictureTaken row, int number, string mediaType) => string.Create(CultureInfo.InvariantCulture,
        $"{row.At:yyyy-MM-dd}-{number:00000}.{Ending(mediaType)}");

    public static string Ending(string mediaType) => mediaType switch { "image/jpeg" => "jpg", "image/png" => "png", "image/webp" => "webp", _ => "bin" };

    /// <summary>Comma separated as RFC 4180 has it, with the mark that tells spreadsheets it is UTF-8.</summary>
    public static byte[] Csv(IEnumerable<SharedPicture> pictures)
    {
        var text = new StringBuilder("file,taken,part,words,picture,remark\r\n");
        foreach (var p in pictures)
            text.AppendJoin(',', ((ImmutableArray<string>)[p.File, p.Row.At.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture), p.Part, p.Row.Words, p.Row.Picture, p.Remark]).Select(Cell)).Append("\r\n");
        return [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text.ToString())];
    }

    /// <summary>A cell that begins as a formula does is set behind an apostrophe: a spreadsheet must not run what somebody wrote.</summary>
    static string Cell(string text)
    {
        var safe = text is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? "'" + text : text;
        return safe.AsSpan().ContainsAny("\",\r\n") ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }
}
