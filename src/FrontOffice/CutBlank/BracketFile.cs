using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.CutBlank;

/// <summary>A folded part as a person types it (docs/guide/blank.md): lengths with their units, gauges by name.</summary>
public static class BracketFile
{
    /// <summary>UTF-8, at most 16 MB.</summary>
    public static Parsed<FaceTree> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            var bracket = BracketJson.Read(TextFile.Decode(bytes));
            return bracket.Refusal is { } refusal ? refusal : bracket.Value.ToFaceTree();
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }
}
