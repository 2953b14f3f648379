using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MakeToSize;

/// <summary>
/// A sheet of sizes to be identified (docs/guide/command-line.md): rows under the heading <c>item, what, facet, value, instrument,
/// condition, coat, note</c>. Rows of one item are one question.
/// </summary>
public static class SizeSheet
{
    static readonly Dictionary<string, string[]> Tables = new() { ["item"] = ["what", "facet", "value", "instrument", "condition", "coat", "note"] };

    /// <summary>UTF-8, at most 16 MB.</summary>
    public static Parsed<ImmutableArray<Question>> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Questions(Rows(TextFile.Decode(bytes)));
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    /// <summary>One question for each item, in the order the items first come.</summary>
    public static Parsed<ImmutableArray<Question>> Read(IReadOnlyList<TypedSize> rows)
    {
        try
        {
            return Questions(rows);
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    static ImmutableArray<Question> Questions(IReadOnlyList<TypedSize> rows)
    {
        if (rows.Count == 0) throw new RefusedException(Refusal.Of("sheet", null, "give at least one row under a heading that begins with item, what"));
        var (spelling, instruments) = (SheetSpelling.Of(inches: false), InstrumentList.Usual());
        var questions = ImmutableArray.CreateBuilder<Question>();
        foreach (var item in rows.GroupBy(r => r.Item))
        {
            var first = item.First();
            var place = first.Line > 0 ? new Place(first.Line) : Place.None;
            var subject = MeasuredWords.SubjectOf(first, place);
            if (item.FirstOrDefault(r => MeasuredWords.SubjectOf(r, new Place(r.Line)) != subject) is { } other)
                throw new Place(other.Line).Refuse("what", other.What, $"item {other.Item} is {first.What} above; give the other thing a name of its own");
            questions.Add(new Question(subject, [.. item.Select(r => MeasuredWords.Read(r, spelling, instruments))], item.Key).Checked());
        }
        return questions.ToImmutable();
    }

    /// <summary>Whether the first heading is that of a sheet of sizes.</summary>
    public static bool IsOne(string text) =>
        SheetRows.Read(text, Tables.Keys) is [var first, ..] && Tables.ContainsKey(first.Cell(0).ToLowerInvariant());

    internal static List<TypedSize> Rows(string text)
    {
        SheetTable? table = null;
        var rows = new List<TypedSize>();
        foreach (var row in SheetRows.Read(text, Tables.Keys))
        {
            if (SheetTable.Opened(row, Tables) is { } opened)
            {
                table = opened;
                continue;
            }
            if (table is null) throw new Place(row.Line).Refuse("first cell", row.Cell(0), "begin with the heading item,what,facet,value,instrument,condition,note");
            var c = new SheetCells(table, row);
            rows.Add(new(c.Line, c.First, c["what"], c["facet"], c["value"], c["instrument"], c["condition"], c["coat"], c["note"]));
        }
        return rows;
    }
}
