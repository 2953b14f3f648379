using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.DrawingOffice.Photo.Targets;

/// <summary>
/// The sheet that a part lies on: a frame of black squares on an even lattice round an empty middle. Some squares have a white eye; which,
/// round the frame, is the key: any eight squares in a row stand so at one place of one sheet only, whichever way up (a test counts them).
/// Places are mm from the middle of the frame, x along the paper's width, y up.
/// </summary>
/// <param name="Columns">Squares along the width.</param>
/// <param name="Rows">Squares along the height.</param>
/// <param name="Key">1 for a square with an eye, anticlockwise from the bottom left corner.</param>
public sealed record Target(PaperSize Paper, int Columns, int Rows, string Key)
{
    /// <summary>mm between the middles of neighbouring squares.</summary>
    public const double Pitch = 20;

    /// <summary>Side of a square, mm.</summary>
    public const double Side = 10;

    /// <summary>Diameter of an eye, mm.</summary>
    public const double Eye = 4;

    /// <summary>Length of the check lines, mm.</summary>
    public const double CheckLength = 100;

    public static Target A4 { get; } = new(PaperSize.A4, 10, 14, "10110100011110001101101000100000000000110100");

    public static Target A3 { get; } = new(PaperSize.A3, 14, 20, "0011001011111011101011011101000010111100100101001101010001110011");

    public static Target Letter { get; } = new(new PaperSize("Letter", 215.9, 279.4), 10, 13, "011111001100010011011111011111111100001001");

    public static ImmutableArray<Target> All { get; } = [A4, A3, Letter];

    public string Name => Paper.Name;

    public int Count => 2 * (Columns + Rows) - 4;

    /// <summary>The sheet of a paper named a4, a3 or letter.</summary>
    public static Parsed<Target> Of(string? name)
    {
        foreach (var target in All)
            if (string.Equals(target.Name, name?.Trim(), StringComparison.OrdinalIgnoreCase)) return target;
        return Refusal.Of("target", name, "the paper of the target sheet: a4, a3 or letter");
    }

    public bool HasEye(int index) => Key[index] == '1';

    /// <summary>Lattice place of a square, from the bottom left; anticlockwise.</summary>
    public (int Column, int Row) Cell(int index)
    {
        var (across, up) = (Columns - 1, Rows - 1);
        return index <= across ? (index, 0)
            : index <= across + up ? (across, index - across)
            : index <= 2 * across + up ? (2 * across + up - index, up)
            : (0, Count - index);
    }

    /// <summary>The square at a lattice place, or −1 where there is none.</summary>
    public int IndexOf(int column, int row)
    {
        var (across, up) = (Columns - 1, Rows - 1);
        if (column < 0 || row < 0 || column > across || row > up) return -1;
        return row == 0 ? column
            : column == across ? across + row
            : row == up ? 2 * across + up - column
            : column == 0 ? Count - row
            : -1;
    }

    /// <summary>Middle of a square, mm.</summary>
    public Vec2 Middle(int index)
    {
        var (column, row) = Cell(index);
        return new((column - (Columns - 1) / 2.0) * Pitch, (row - (Rows - 1) / 2.0) * Pitch);
    }

    /// <summary>Corners of a square, mm, anticlockwise from its bottom left.</summary>
    public ImmutableArray<Vec2> Corners(int index)
    {
        var (m, h) = (Middle(index), Side / 2);
        return [m + new Vec2(-h, -h), m + new Vec2(h, -h), m + new Vec2(h, h), m + new Vec2(-h, h)];
    }

    /// <summary>Every corner of every square, mm.</summary>
    public ImmutableArray<Vec2> Points() => [.. Enumerable.Range(0, Count).SelectMany(i => Corners(i))];

    /// <summary>Half width and half height of the frame over the outsides of its squares, mm.</summary>
    public Vec2 Half => new(((Columns - 1) * Pitch + Side) / 2, ((Rows - 1) * Pitch + Side) / 2);

    /// <summary>Half width and half height of the empty middle, mm.</summary>
    public Vec2 Clear => Half - new Vec2(Side, Side);
}
