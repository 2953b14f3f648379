using System.Globalization;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.MeasureSolid.Rows;

/// <summary>Writes a sample's flat survey under a sheet in space, as a face that joins.</summary>
public static class FaceText
{
    /// <summary>The sheet with the flat survey on a face; what stood on that face before is replaced.</summary>
    /// <param name="way">Where the flat sketch's x runs, roughly.</param>
    /// <param name="standing">Readings that stand; sizes to identify are no part of a survey and are left out.</param>
    public static string With(string text, string face, string way, SampleSketch? sketch, IEnumerable<ReadingEntry> standing)
    {
        var rows = new List<string> { $"{TypedSolid.FaceRow},{face.Trim()},,{way.Trim()}", "feature,kind,from,to,x,y,size,length,turn" };
        rows.AddRange((sketch?.Features ?? []).Select(f => Row(f.Id, f.Kind, f.From, f.To, Number(f.X), Number(f.Y), Number(f.Size), Number(f.Length), f.Turn is { } turn ? $"{Number(turn)} rad" : "")));
        rows.AddRange(["", "kind,from,to,value,instrument,note"]);
        rows.AddRange(standing.Where(r => !StoredSizes.IsOne(r)).Select(r => Row(r.Kind, r.From, r.To, r.Value, With(r), r.Note)));
        return $"{Without(text, face.Trim()).TrimEnd('\n')}\n\n{string.Join('\n', rows)}\n";
    }

    static string Without(string text, string face)
    {
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        var kept = new List<string>();
        var dropping = false;
        foreach (var line in lines)
        {
            string[] cells = [.. line.Split([',', ';', '\t']).Select(c => c.Trim()), ""];
            if (cells[0].Equals(TypedSolid.FaceRow, StringComparison.OrdinalIgnoreCase)) dropping = cells[1] == face;
            if (!dropping) kept.Add(line);
        }
        return string.Join('\n', kept);
    }

    /// <summary>A ± of its own counts instead of the instrument.</summary>
    static string With(ReadingEntry r) => r.PlusMinus.Trim() switch { "" => r.Instrument, ['±' or '+', ..] own => own, var own => $"± {own}" };

    // No exponent, for the sheet reads none.
    static string Number(double? value) => value?.ToString("0.############", CultureInfo.InvariantCulture) ?? "";

    static string Row(params string[] cells) => string.Join(',', cells.Select(Cell)).TrimEnd(',');

    static string Cell(string text)
    {
        var flat = string.Concat(text.Trim().Select(c => char.IsControl(c) ? ' ' : c));
        return flat.AsSpan().IndexOfAny(",;\t") < 0 && flat is not ['"' or '#', ..] ? flat : $"\"{flat.Replace("\"", "\"\"")}\"";
    }
}
