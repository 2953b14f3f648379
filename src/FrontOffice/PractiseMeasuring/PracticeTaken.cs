using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSample.Sheet;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.PractiseMeasuring;

/// <summary>A check line as read, mm.</summary>
/// <param name="Row">Place among the readings as written, from 0.</param>
/// <param name="Length">As drawn.</param>
sealed record CheckRead(int Row, bool Up, double Length, double Value, double Sigma, string Instrument);

/// <summary>The readings of a practice sheet as understood. A bad row is told and left out.</summary>
/// <param name="Rows">For each reading of the sample its place among those written.</param>
/// <param name="Refused">Row from 0 → why it does not count.</param>
sealed record PracticeTaken(PracticePlate Plate, Sample Sample, ImmutableArray<int> Rows, ImmutableArray<CheckRead> Checks, ImmutableSortedDictionary<int, string> Refused)
{
    static readonly SheetSpelling Spelling = SheetSpelling.Of(inches: false);

    public static PracticeTaken Of(PracticeRequest request)
    {
        var plate = PracticePlate.Of(request.Number);
        var draft = new SampleDraft();
        foreach (var feature in PracticePlate.Rough.Features) draft.Add(feature, Place.None);
        var instruments = InstrumentList.Usual();
        var (rows, checks) = (ImmutableArray.CreateBuilder<int>(), ImmutableArray.CreateBuilder<CheckRead>());
        var refused = ImmutableSortedDictionary.CreateBuilder<int, string>();
        for (var i = 0; i < request.Readings.Length; i++)
        {
            var written = request.Readings[i];
            try
            {
                if (written.IsCheck) checks.Add(Check(i, written, instruments));
                else
                {
                    var reading = ReadingSheet.ReadingOf(new(0, written.Kind, written.From.Trim(), written.To.Trim(), written.Value.Trim(), written.Instrument.Trim(), ""), draft.NextIndex, Spelling, instruments, Place.None);
                    draft.Add(reading, Place.None);
                    // Refuses a kind that has no place on a practice sheet.
                    _ = plate.True(reading.Kind, reading.From, reading.To, default);
                    rows.Add(i);
                }
            }
            catch (RefusedException e)
            {
                refused.Add(i, e.Message);
            }
        }
        var id = string.Create(CultureInfo.InvariantCulture, $"practice-{plate.Number}");
        return new(plate, draft.Finish(id, "Practice plate", Place.None), rows.ToImmutable(), checks.ToImmutable(), refused.ToImmutable());
    }

    static CheckRead Check(int row, PracticeReading written, IReadOnlyDictionary<string, Instrument> instruments)
    {
        var way = PracticeSheet.Ways.FirstOrDefault(w => written.Same(written.Kind, w.Words, written.To));
        if (way.Words is null) throw Place.None.Refuse("from", written.From, "a check line runs across or up");
        var length = PracticeSheet.Lengths.FirstOrDefault(l => written.Same(written.Kind, written.From, l.Words));
        if (length.Words is null) throw Place.None.Refuse("to", written.To, $"name the check line by its length: {string.Join(" or ", PracticeSheet.Lengths.Select(l => l.Words))}");
        var read = new ReadingWords(KindRule.Of(ReadingKind.CentreDistance), Spelling, instruments, Place.None).Read(written.Value.Trim(), written.Instrument.Trim());
        return Math.Abs(read.Value / length.Mm - 1) <= PrintFit.MostScale
            ? new(row, way.Up, length.Mm, read.Value, read.Sigma, written.Instrument.Trim())
            : throw Place.None.Refuse("value", written.Value, $"no printer is that far off; the line {way.Words} is about {length.Mm:0} mm, read it again");
    }
}
