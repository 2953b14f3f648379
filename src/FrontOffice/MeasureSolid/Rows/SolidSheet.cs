using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSample.Sheet;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSolid.Rows;

/// <summary>Makes a sample in space of a typed sheet. Nothing is taken over when any row of it is refused.</summary>
static class SolidSheet
{
    /// <param name="fetch">Bytes of a flat sheet by its name; refuses in a sentence where there is none.</param>
    public static SolidSample Read(TypedSolid sheet, Func<string, byte[]> fetch)
    {
        var spelling = SheetSpelling.Of(sheet.Inches);
        var instruments = InstrumentList.Usual();
        foreach (var own in sheet.Instruments) instruments[own.Name] = ReadingSheet.InstrumentOf(own, spelling);
        var draft = new SolidDraft();
        foreach (var f in sheet.Features) draft.Add(FeatureOf(f, spelling), new Place(f.Line));
        foreach (var r in sheet.Readings) draft.Add(ReadingOf(r, draft.NextIndex, spelling, instruments), new Place(r.Line));
        foreach (var f in sheet.Faces) draft.Add(FaceOf(f, fetch), new Place(f.Line));
        return draft.Finish(sheet.Id, sheet.Title, new Place(sheet.LastLine));
    }

    static SolidFeature FeatureOf(TypedSolidFeature typed, SheetSpelling spelling)
    {
        var place = new Place(typed.Line);
        double?[] at = [Sketch(typed.X, "x"), Sketch(typed.Y, "y"), Sketch(typed.Z, "z")];
        var given = at.Count(c => c is not null);
        if (given is 1 or 2) throw place.Refuse(at[0] is null ? "x" : at[1] is null ? "y" : "z", null, "give all three places of the sketch or none");
        return new(typed.Id, SolidWords.Kind(typed.Kind, "kind", place))
        {
            On = Given(typed.On),
            From = Given(typed.From),
            To = Given(typed.To),
            Sketch = given == 3 ? new Vec3(at[0]!.Value, at[1]!.Value, at[2]!.Value) : null,
            SketchDirection = Given(typed.Way) is { } way ? SolidWords.Way(way, "way", place) : null,
            SketchSize = Given(typed.Size) is { } size ? spelling.Length(size, "size", place).Mm : null,
        };

        double? Sketch(string cell, string field) => Given(cell) is { } text ? spelling.Length(text, field, place, signed: true).Mm : null;
    }

    static SolidReading ReadingOf(TypedSolidReading typed, int index, SheetSpelling spelling, IReadOnlyDictionary<string, Instrument> instruments)
    {
        var place = new Place(typed.Line);
        var rule = SolidRule.Named(typed.Kind) ?? throw place.Refuse("kind", typed.Kind, $"write one of {string.Join(", ", SolidRule.All.Select(r => r.Words))}");
        var read = new ReadingWords(rule, spelling, instruments, place).Read(typed.Value, typed.Instrument);
        return new(index, rule.Kind, typed.From, Given(typed.To), read.Value, read.Sigma)
        {
            ValueY = read.ValueY,
            Frame = typed.Frame,
            At = Given(typed.At),
            Pin = Given(typed.Pin) is { } pin ? PinOf(pin, rule, spelling, place) : null,
            Instrument = typed.Instrument,
            Written = typed.Value,
        };
    }

    static double PinOf(string cell, SolidRule rule, SheetSpelling spelling, Place place)
    {
        if (rule.Kind is not (SolidReadingKind.HeightOverPin or SolidReadingKind.HeightUnderPin or SolidReadingKind.OverHoles or SolidReadingKind.BetweenHoles))
            throw place.Refuse("pin", cell, $"{rule.One} is read without a pin; leave it empty");
        return spelling.Length(cell, "pin", place).Mm is > 0 and var pin ? pin : throw place.Refuse("pin", cell, "a pin has a diameter of more than 0");
    }

    static FlatFace FaceOf(TypedFace typed, Func<string, byte[]> fetch)
    {
        var place = new Place(typed.Line);
        var sample = typed.File.Length == 0 ? ReadingSheet.Read(TypedSheet.Read(typed.Text).Value) : Fetched(typed.File, fetch);
        return new(typed.Face, sample) { Along = Given(typed.Way) is { } way ? SolidWords.Way(way, "way", place) : null };
    }

    static Sample Fetched(string file, Func<string, byte[]> fetch)
    {
        var read = SampleFile.Read(fetch(file));
        return read.Refusal is { } refusal ? throw new RefusedException(refusal.In(file)) : read.Value;
    }

    static string? Given(string cell) => ReadingSheet.Given(cell);
}
