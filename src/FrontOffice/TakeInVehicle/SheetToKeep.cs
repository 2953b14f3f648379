using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSample.Sheet;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths.Units;
using WitnessMark.Stores;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.TakeInVehicle;

/// <summary>What one sheet gives the stores. The sheet is checked whole first, so that no bad row is ever kept.</summary>
/// <param name="Sketch">Null for a sheet of sizes.</param>
sealed record SheetToKeep(SampleSketch? Sketch, ImmutableArray<ReadingEntry> Readings, ImmutableArray<OwnedInstrument> Instruments)
{
    const string Device = "sheet";

    public static SheetToKeep Of(PartSample sample, string text, DateTimeOffset at)
    {
        if (SizeSheet.IsOne(text)) return OfSizes(sample, text, at);
        var sheet = TypedSheet.Read(text).Value;
        var checkedSample = ReadingSheet.Read(sheet);
        return new(
            new SampleSketch(sample.Id, [.. sheet.Features.Zip(checkedSample.Features, Sketched)]),
            [.. sheet.Readings.Select((r, i) => Entry(sample, i, at, r.Kind, r.From, r.To, WithUnit(r.Value, sheet.Inches), r.Instrument, r.Note))],
            [.. ReadingSheet.Instruments(sheet).Select(Owned)]);
    }

    static SheetToKeep OfSizes(PartSample sample, string text, DateTimeOffset at)
    {
        var rows = SizeSheet.Rows(text);
        _ = SizeSheet.Read(rows).Value;
        return new(null, [.. rows.Select((r, i) => Entry(sample, i, at, StoredSizes.Kind(r), r.Item, r.Condition, r.Value, r.Instrument, r.Note))], []);
    }

    static ReadingEntry Entry(PartSample sample, int row, DateTimeOffset at, string kind, string from, string to, string value, string instrument, string note)
    {
        var alone = SigmaWords.IsAlone(instrument);
        return new(NamedId.Of(sample.Id, $"reading {row + 1}"), sample.Id, kind, from, to, value, alone ? instrument : "", alone ? "" : instrument, note, at, Device);
    }

    static SketchedFeature Sketched(TypedFeature typed, Feature read) =>
        new(typed.Id, typed.Kind, typed.From, typed.To, read.Sketch?.X, read.Sketch?.Y, read.SketchTurn, read.SketchSize, read.SketchLength)
        {
            Condition = read.Condition == FeatureCondition.Sound ? null : ConditionWords.Of(read.Condition),
            Wear = read.Wear,
        };

    static OwnedInstrument Owned(Instrument i) =>
        new(NamedId.Of(NamedId.Vehicles, $"instrument {i.Name}"), i.Name, i.Resolution, i.StatedError, i.Repeatability, i.ReadsAngle);

    /// <summary>An entry stands without its sheet, so a bare number of an inch sheet takes its unit along.</summary>
    static string WithUnit(string value, bool inches) =>
        inches && Lengths.Read(value, TradeSpelling.Of(LengthUnit.Inch)) is { Ok: true, Value.Bare: true } ? $"{value} in" : value;
}
