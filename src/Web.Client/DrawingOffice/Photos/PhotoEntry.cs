using System.Collections.Immutable;
using WitnessMark.FrontOffice.MeasurePhoto;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Web.Client.DrawingOffice.Measure;

namespace WitnessMark.Web.Client.DrawingOffice.Photos;

/// <summary>Writes what was picked down as readings of the sample, through the same tray as typed ones.</summary>
static class PhotoEntry
{
    /// <summary>What came of it in words, and why some did not go in.</summary>
    public readonly record struct Entered(string Words, string? Why);

    /// <summary>
    /// New features go on the sketch where the photograph puts them. A reading that stands already as it was picked is left; one that was
    /// picked anew takes the place of the old, which stays on record.
    /// </summary>
    public static async Task<Entered> Enter(SampleBench bench, ImmutableArray<PickShown> picks)
    {
        var rows = picks.Where(p => p.Why is null).Select(p => p.Rows).ToList();
        if (rows.Count == 0) return new("Nothing was found to enter.", null);
        var known = bench.Features.Select(f => f.Id).ToHashSet();
        bench.Place([.. rows.SelectMany(r => r.Features).Where(f => !known.Contains(f.Id)).Select(Spelling.Read).OfType<WitnessMark.DrawingOffice.Survey.Feature>()]);
        var (written, standing) = (0, 0);
        string? why = null;
        foreach (var reading in rows.SelectMany(r => r.Readings).Prepend(Scale(rows[0])))
        {
            var before = bench.Lines.FirstOrDefault(l => l.Entry.Kind == reading.Kind && l.Entry.From == reading.From && l.Entry.Note == Note(rows[0].Frame));
            if (before is { } same && same.Entry.Value == reading.Value)
            {
                standing++;
                continue;
            }
            if (await bench.Append(reading.Kind, reading.From, reading.To, reading.Value, reading.PlusMinus.Length > 0 ? $"± {reading.PlusMinus}" : "", Note(rows[0].Frame)) is { } refusal)
            {
                why ??= refusal;
                continue;
            }
            written++;
            if (before is { } old && await bench.Withdraw(old.Entry, "picked anew in the photograph") is { } stands) why ??= stands;
        }
        return new($"{written} {(written == 1 ? "reading" : "readings")} written down{(standing > 0 ? $", {standing} stood already" : "")}.", why);
    }

    /// <summary>How true the photograph's scale is, once for all its picks.</summary>
    static PhotoRow Scale(PhotoRows rows) => new(StoredSample.FrameKind, rows.Frame, "", rows.ScaleWords, "");

    /// <summary>Only what came from this photograph is replaced: a diameter by calliper stands beside it.</summary>
    static string Note(string frame) => $"off photograph {frame}";
}
