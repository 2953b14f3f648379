using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample.Json;
using WitnessMark.FrontOffice.MeasureSample.Sheet;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>A sample from a file: a reading sheet (docs/guide/survey-sheet.md) or a survey in JSON, told apart by the first character.</summary>
public static class SampleFile
{
    /// <summary>UTF-8, at most 16 MB. Either the whole file is taken or one sentence says why not.</summary>
    public static Parsed<Sample> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Read(TextFile.Decode(bytes)).Value;
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    public static Parsed<Sample> Read(string text)
    {
        try
        {
            return text.AsSpan().TrimStart() is ['{' or '[', ..] ? SurveyJson.Read(text) : ReadingSheet.Read(TypedSheet.Read(text).Value);
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }
}
