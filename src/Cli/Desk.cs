using System.Text.Json;
using WitnessMark.Maths;

namespace WitnessMark.Cli;

/// <summary>What a command works with: where it writes, the clock, and files by name.</summary>
sealed record Desk(TextWriter Out, TextWriter Error, TimeProvider Clock)
{
    /// <summary>Bytes; no typed file that a command reads comes near it.</summary>
    const long LargestFile = 16_000_000;

    static readonly JsonSerializerOptions Plain = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The bytes of a file; refused by size before it is read.</summary>
    public static byte[] Read(string path, long largest = LargestFile)
    {
        var file = new FileInfo(path);
        if (Directory.Exists(path) || !file.Exists) throw Refused(path, "name a file that is there");
        if (file.Length > largest) throw Refused(path, $"it holds {file.Length / 1e6:0.#} MB, and a file may hold at most {largest / 1_000_000} MB");
        try
        {
            return File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Refused(path, "name a file that you may read");
        }
    }

    /// <summary>Writes a file whole or not at all.</summary>
    /// <returns>Its full path.</returns>
    public static string Write(string path, byte[] bytes)
    {
        var part = path + ".part";
        try
        {
            if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder) Directory.CreateDirectory(folder);
            File.WriteAllBytes(part, bytes);
            File.Move(part, path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Refused(path, "name a place that you may write to");
        }
        return Path.GetFullPath(path);
    }

    /// <summary>One JSON object, snake_case.</summary>
    public void WriteJson<T>(T value) => Out.WriteLine(JsonSerializer.Serialize(value, Plain));

    static RefusedException Refused(string path, string wanted) => new(Refusal.Of("file", path, wanted));
}
