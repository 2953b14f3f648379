using System.Collections.Immutable;
using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Intake;

/// <summary>One record of a delimited text, or why it could not be read.</summary>
/// <param name="Line">The line it begins on, from 1.</param>
/// <param name="Cells">Without quotes and outer blanks; empty when it has a fault.</param>
readonly record struct DelimitedRow(int Line, ImmutableArray<string> Cells, Refusal? Fault)
{
    public bool Blank => Fault is null && Cells.All(c => c.Length == 0);
}

/// <summary>
/// Reads cells parted by a separator, quoted as in RFC 4180: a quoted cell may hold separators, line breaks and doubled
/// quotes. A quote later in a cell is itself (3 5/16"). After a fault reading goes on with the next line, so that one
/// stray quote costs one line.
/// </summary>
sealed class Delimited(string text, char separator)
{
    /// <summary>Longest quoted cell, characters: an unclosed quote must not swallow the file.</summary>
    public const int LongestCell = 10_000;

    int _at;
    int _line = 1;

    public static IEnumerable<DelimitedRow> Read(string text, char separator)
    {
        var reader = new Delimited(text, separator);
        while (reader._at < text.Length) yield return reader.Next();
    }

    DelimitedRow Next()
    {
        var (start, line) = (_at, _line);
        var cells = ImmutableArray.CreateBuilder<string>();
        do
        {
            var (cell, fault) = Cell();
            if (fault is not null)
            {
                _at = EndOfLine(start);
                _line = line;
                PassLineEnd();
                return new(line, [], Refusal.Of($"column {cells.Count + 1}", text[start..EndOfLine(start)], fault, line));
            }
            cells.Add(cell);
        }
        while (PassSeparator());
        PassLineEnd();
        return new(line, cells.ToImmutable(), null);
    }

    (string Cell, string? Fault) Cell()
    {
        var begin = _at;
        while (_at < text.Length && text[_at] != separator && text[_at] is ' ' or '\t') _at++;
        if (_at < text.Length && text[_at] == '"') return Quoted();
        _at = begin;
        while (_at < text.Length && text[_at] != separator && text[_at] is not ('\r' or '\n')) _at++;
        return (text[begin.._at].Trim(), null);
    }

    (string Cell, string? Fault) Quoted()
    {
        var cell = new StringBuilder();
        for (_at++; _at < text.Length && cell.Length <= LongestCell; _at++)
        {
            var c = text[_at];
            if (c == '"' && Ahead('"')) _at++;
            else if (c == '"') return (cell.ToString().Trim(), Closed());
            else if (c == '\n' || (c == '\r' && !Ahead('\n'))) _line++;
            cell.Append(c);
        }
        return ("", "the quote that opens a cell of this line is not closed");
    }

    /// <summary>Passes the closing quote and blanks behind it; a fault when anything else follows.</summary>
    string? Closed()
    {
        for (_at++; _at < text.Length && text[_at] != separator && text[_at] is ' ' or '\t';) _at++;
        return _at == text.Length || text[_at] == separator || text[_at] is '\r' or '\n' ? null
            : "after the closing quote comes more; double each quote inside a quoted cell";
    }

    bool Ahead(char c) => _at + 1 < text.Length && text[_at + 1] == c;

    bool PassSeparator()
    {
        if (_at >= text.Length || text[_at] != separator) return false;
        _at++;
        return true;
    }

    void PassLineEnd()
    {
        if (_at >= text.Length) return;
        _at += text[_at] == '\r' && Ahead('\n') ? 2 : 1;
        _line++;
    }

    int EndOfLine(int from) => text.AsSpan(from).IndexOfAny('\r', '\n') is >= 0 and var n ? from + n : text.Length;
}
