using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Letters;

/// <summary>Reads one stroke as alphabet.txt spells it.</summary>
static class Strokes
{
    /// <summary>A dot is a short upright stroke: a closed ring smaller than the pen is drawn hollow by some browsers.</summary>
    const double DotHeight = 0.4;

    /// <summary>Control distance of a quarter ellipse as a part of its half-axis: 4/3 (√2 − 1).</summary>
    const double Quarter = 0.5522847498307936;

    public static Curve Read(string spelled)
    {
        var words = spelled.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words[0][0] == '.')
        {
            var dot = Numbers(words[0][1..]);
            return Curve.Straight([new(dot[0], dot[1] - DotHeight / 2), new(dot[0], dot[1] + DotHeight / 2)]);
        }
        var start = Numbers(words[0]);
        var at = new Vec2(start[0], start[1]);
        var pieces = ImmutableArray.CreateBuilder<Piece>();
        foreach (var word in words.Skip(1))
        {
            pieces.Add(Next(at, word));
            at = pieces[^1].End;
        }
        return new(new(start[0], start[1]), pieces.ToImmutable());
    }

    static Piece Next(Vec2 at, string word)
    {
        var kind = word[0];
        var n = Numbers(char.IsLetter(kind) ? word[1..] : word);
        var end = new Vec2(n[^2], n[^1]);
        return kind switch
        {
            'h' => Rounded(at, new(end.X, at.Y), end),
            'v' => Rounded(at, new(at.X, end.Y), end),
            'q' => Quadratic(at, new(n[0], n[1]), end),
            _ => Piece.To(end),
        };
    }

    static Piece Rounded(Vec2 at, Vec2 corner, Vec2 end) => new(at + Quarter * (corner - at), end + Quarter * (corner - end), end, false);

    static Piece Quadratic(Vec2 at, Vec2 control, Vec2 end) => new((at + 2 * control) / 3, (end + 2 * control) / 3, end, false);

    static double[] Numbers(string word) => [.. word.Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
}
