using System.Globalization;
using System.Text;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>
/// The stored sketch and readings written back as the sheets they could have been typed on: a reading sheet
/// (docs/guide/survey-sheet.md), and a sheet of sizes where there are any. What cannot be understood stands there as a remark.
/// </summary>
static class SheetText
{
    /// <param name="id">Short name of the sample.</param>
    /// <param name="refused">Rows that do not count, by entry or feature.</param>
    public static string Readings(string id, LoanRequest request, IReadOnlySet<string> refused)
    {
        var (sheet, features) = (new StringBuilder(), request.Sketch?.Features ?? []);
        var worn = features.Any(f => f.Condition is not null);
        sheet.Append($"# {Flat(request.Sample.Title)}. Values stand as they were read; a bare number is mm.\nsample,{Cell(id)},{Cell(request.Sample.Title)}\nunits,mm\n");
        sheet.Append($"\nfeature,kind,from,to,x,y,size,length,turn{(worn ? ",condition,wear" : "")}\n");
        foreach (var f in features)
        {
            string[] place = [f.Id, f.Kind, f.From, f.To, Number(f.X), Number(f.Y), Number(f.Size), Number(f.Length), f.Turn is { } turn ? $"{Number(turn)} rad" : ""];
            Row(refused.Contains(f.Id), worn ? [.. place, f.Condition ?? "", Number(f.Wear)] : place);
        }
        if (!request.Instruments.IsEmpty) sheet.Append("\ninstrument,resolution,error,repeat\n");
        foreach (var i in request.Instruments)
            Row(false, [i.Name, Step(i.Resolution, i), Step(i.StatedError, i), Step(i.Repeatability, i)]);
        var readings = request.History.Standing.Where(r => !StoredSizes.IsOne(r)).ToLookup(r => r.Kind.Trim().Equals(StoredSample.FrameKind, StringComparison.OrdinalIgnoreCase));
        if (readings[true].Any()) sheet.Append("\nframe,scale,note\n");
        foreach (var f in readings[true])
            Row(refused.Contains(f.Id.ToString()), [f.From, f.Value, f.Note]);
        sheet.Append("\nkind,from,to,value,instrument,note\n");
        foreach (var r in readings[false])
            Row(refused.Contains(r.Id.ToString()), [r.Kind, r.From, r.To, r.Value, With(r), r.Note]);
        return sheet.ToString();

        void Row(bool remark, string[] cells) => sheet.Append($"{(remark ? "# does not count: " : "")}{string.Join(',', cells.Select(Cell))}\n");
    }

    /// <summary>Null where no size is to be identified.</summary>
    public static string? Sizes(LoanRequest request)
    {
        var sizes = request.History.Standing.Where(StoredSizes.IsOne).Select(StoredSizes.Typed).ToList();
        return sizes.Count == 0 ? null : "item,what,facet,value,instrument,condition,note\n"
            + string.Concat(sizes.Select(s => $"{string.Join(',', new[] { s.Item, s.What, s.Facet, s.Value, s.Instrument, s.Condition, s.Note }.Select(Cell))}\n"));
    }

    /// <summary>The ± of the reading's own, or else its instrument.</summary>
    static string With(ReadingEntry r) => r.PlusMinus.Trim() switch { "" => r.Instrument, ['±' or '+', ..] own => own, var own => $"± {own}" };

    /// <summary>Radians are said, for a bare angle is degrees.</summary>
    static string Step(double value, OwnedInstrument of) => of.ReadsAngle ? $"{Number(value)} rad" : Number(value);

    /// <summary>mm or radians, to a million millionth: no exponent, for the sheet reads none.</summary>
    static string Number(double? value) => value?.ToString("0.############", CultureInfo.InvariantCulture) ?? "";

    /// <summary>A cell of the reading sheet: between double quotes where it would be taken apart or for a remark.</summary>
    static string Cell(string text)
    {
        var flat = Flat(text);
        return flat.AsSpan().IndexOfAny(",;\t") < 0 && flat is not ['"' or '#', ..] ? flat : $"\"{flat.Replace("\"", "\"\"")}\"";
    }

    static string Flat(string text) => string.Concat(text.Trim().Select(c => char.IsControl(c) ? ' ' : c));
}
