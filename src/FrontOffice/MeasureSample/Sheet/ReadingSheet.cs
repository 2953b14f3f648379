using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.FrontOffice.MeasureSample.Sheet;

/// <summary>Makes a sample of a typed sheet. Nothing is taken over when any row of it is refused.</summary>
static class ReadingSheet
{
    public static Sample Read(TypedSheet sheet)
    {
        var spelling = SheetSpelling.Of(sheet.Inches);
        var instruments = InstrumentList.Usual();
        foreach (var own in Instruments(sheet)) instruments[own.Name] = own;
        var draft = new SampleDraft();
        foreach (var typed in sheet.Features) draft.Add(FeatureOf(typed, spelling), new Place(typed.Line));
        foreach (var typed in sheet.Readings)
        {
            var place = new Place(typed.Line);
            draft.Add(ReadingOf(typed, draft.NextIndex, spelling, instruments, place), place);
        }
        foreach (var typed in sheet.Frames) draft.Add(FrameOf(typed), new Place(typed.Line));
        var sample = draft.Finish(sheet.Id, sheet.Title, new Place(sheet.LastLine));
        if (TriangleCheck.Find(sample) is not { } triangle) return sample;
        throw new Place(sheet.Readings[triangle.Index].Line).Refuse("value", sheet.Readings[triangle.Index].Value, triangle.Wanted);
    }

    /// <summary>The person's own instruments on the sheet.</summary>
    public static IEnumerable<Instrument> Instruments(TypedSheet sheet) => sheet.Instruments.Select(i => InstrumentOf(i, SheetSpelling.Of(sheet.Inches)));

    public static Reading ReadingOf(TypedReading typed, int index, SheetSpelling spelling, IReadOnlyDictionary<string, Instrument> instruments, Place place)
    {
        var rule = KindRule.Named(typed.Kind)
            ?? throw place.Refuse("kind", typed.Kind, $"write one of {string.Join(", ", KindRule.All.Select(r => r.Words))}");
        var read = new ReadingWords(rule, spelling, instruments, place).Read(typed.Value, typed.Instrument);
        var to = Given(typed.To);
        var reading = new Reading(index, rule.Kind, typed.From, rule.Measure == Measure.Place ? null : to, read.Value, read.Sigma)
        {
            ValueY = read.ValueY,
            Instrument = typed.Instrument,
            Written = typed.Value,
        };
        return rule.Measure == Measure.Place && to is not null ? reading with { Frame = to } : reading;
    }

    static Feature FeatureOf(TypedFeature typed, SheetSpelling spelling)
    {
        var place = new Place(typed.Line);
        var (x, y) = (Sketch(typed.X, "x", signed: true), Sketch(typed.Y, "y", signed: true));
        if (x is null != y is null) throw place.Refuse(x is null ? "x" : "y", null, "give both places of the sketch or neither");
        return new Feature(typed.Id, FeatureWords.Kind(typed.Kind, "kind", place))
        {
            From = Given(typed.From),
            To = Given(typed.To),
            Sketch = x is { } sx && y is { } sy ? new Vec2(sx, sy) : null,
            SketchSize = Sketch(typed.Size, "size"),
            SketchLength = Sketch(typed.Length, "length"),
            Condition = FeatureWords.Condition(Given(typed.Condition), "condition", place),
            Wear = Sketch(typed.Wear, "wear"),
            SketchTurn = Given(typed.Turn) is { } turn ? spelling.Angle(turn, "turn", place, signed: true).Radians : null,
        };

        double? Sketch(string cell, string field, bool signed = false) =>
            Given(cell) is { } text ? spelling.Length(text, field, place, signed).Mm : null;
    }

    /// <summary>A ± in per cent, 19 times in 20: twice the standard uncertainty.</summary>
    public static PickFrame FrameOf(TypedFrame typed)
    {
        var figure = typed.Scale.TrimStart('±').TrimEnd('%').Trim();
        return Numeral.Read(figure, DecimalMark.Unsaid, "scale") is { Ok: true } percent ? new PickFrame(typed.Name, percent.Value.Value / 200)
            : throw new Place(typed.Line).Refuse("scale", typed.Scale, "write how far off its scale may be, such as ± 0.5 %");
    }

    static Instrument InstrumentOf(TypedInstrument typed, SheetSpelling spelling)
    {
        var place = new Place(typed.Line);
        if (typed.Name.Length == 0) throw place.Refuse("instrument", null, "give the instrument a name");
        var readsAngle = SheetSpelling.LooksLikeAngle(typed.Resolution);
        var own = new Instrument(typed.Name, Figure("resolution", typed.Resolution), Figure("error", typed.Error), Figure("repeat", typed.Repeat), readsAngle);
        return own.StandardUncertainty() > 0 ? own : throw place.Refuse("resolution", typed.Resolution, "an instrument has a smallest step or an error of more than 0");

        double Figure(string field, string cell) => Given(cell) is not { } text ? 0
            : readsAngle ? spelling.Angle(text, field, place).Radians
            : spelling.Length(text, field, place).Mm;
    }

    public static string? Given(string cell) => cell.Length == 0 ? null : cell;
}
