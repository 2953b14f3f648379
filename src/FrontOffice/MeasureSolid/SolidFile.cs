using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSolid.Json;
using WitnessMark.FrontOffice.MeasureSolid.Rows;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>A sample in space from a file: a reading sheet (docs/guide/survey-solid.md) or JSON, told apart by the first character.</summary>
public static class SolidFile
{
    /// <summary>UTF-8, at most 16 MB. Either the whole file is taken or one sentence says why not.</summary>
    /// <param name="fetch">Bytes of a flat sheet that a face names; null where there are no other files.</param>
    public static Parsed<SolidSample> Read(ReadOnlySpan<byte> bytes, Func<string, byte[]>? fetch = null)
    {
        try
        {
            return Read(TextFile.Decode(bytes), fetch).Value;
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    public static Parsed<SolidSample> Read(string text, Func<string, byte[]>? fetch = null)
    {
        try
        {
            return text.AsSpan().TrimStart() is ['{' or '[', ..] ? SolidJson.Read(text) : SolidSheet.Read(TypedSolid.Read(text).Value, fetch ?? None);
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    /// <exception cref="RefusedException">The bytes are no text.</exception>
    public static bool Is(ReadOnlySpan<byte> bytes) => Is(TextFile.Decode(bytes));

    /// <summary>True when the text is a sheet or JSON in space and not a flat one: a feature table with a z or a way, or JSON with a <c>sketch_z_mm</c>, a way or faces.</summary>
    public static bool Is(string text)
    {
        if (text.AsSpan().TrimStart() is ['{' or '[', ..]) return s_inSpace.Any(f => text.Contains(f, StringComparison.Ordinal));
        return text.Split('\n').Select(l => l.Split([',', ';', '\t']).Select(c => c.Trim().Trim('"').ToLowerInvariant()).ToList())
            .Any(cells => cells is ["feature", ..] && (cells.Contains("z") || cells.Contains("way")));
    }

    static readonly string[] s_inSpace = ["\"sketch_z_mm\"", "\"way_x\"", "\"set-up\"", "\"faces\""];

    static byte[] None(string file) => throw new RefusedException(Refusal.Of("on face", file, "no other file is at hand here; put the rows of the face under this row"));
}
