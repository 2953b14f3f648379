using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;

namespace WitnessMark.DrawingOffice.Pieces.Sheets;

/// <summary>
/// A piece with its strains as hatching, the closer the nearer to what the metal bears, rising to the right where it is stretched and falling where it is
/// shrunk; where it bears it no more both tone and hatching change. Shape and closeness tell it, not colour alone. A legend stands below.
/// </summary>
public static class StrainSheet
{
    /// <summary>Hatched from this share of what the metal bears, so far apart in units of the sheet.</summary>
    static readonly (double From, double Apart, string Words)[] s_steps = [(0.1, 4, "to a half of what it bears"), (0.5, 2.2, "to all that it bears"), (1, 1.1, "more than it bears")];

    /// <summary>Null for a piece that is not strained anywhere.</summary>
    public static Sheet? Strained(this Piece piece)
    {
        if (piece.Strains.All(s => s.Share < s_steps[0].From)) return null;
        var (width, height) = KitTables.Size(piece);
        var (margin, unit) = (0.02 * Math.Max(width, height) + 2, Math.Max(width, height) / 160);
        var letters = 4 * unit;
        var legend = 7 * letters;
        var points = piece.Outline.Flatten(0.1);
        var moved = piece.Moved(Maths.Geometry.Pose2.Shift(new(margin - points.Min(p => p.X), margin + legend - points.Min(p => p.Y))));
        ImmutableArray<Mark> marks =
        [
            .. moved.Strains.SelectMany(s => Hatched(s.Edge, s.Share, s.Strain > 0, unit)),
            .. PieceSheet.Marks(moved with { Witnesses = [] }),
            .. Worst(moved, letters),
            .. Legend(piece, margin, legend, letters, unit),
        ];
        return new($"{piece.Name}: where it stretches and shrinks", Math.Max(width, 60 * letters) + 2 * margin, height + 2 * margin + legend, marks);
    }

    static IEnumerable<Mark> Legend(Piece piece, double margin, double legend, double letters, double unit)
    {
        var y = margin + legend - 2.2 * letters;
        foreach (var stretched in new[] { true, false })
        {
            var mine = piece.Strains.Where(s => s.Strain > 0 == stretched && s.Share >= s_steps[0].From).ToList();
            if (mine.Count == 0) continue;
            var x = margin;
            foreach (var (from, _, words) in s_steps)
            {
                Vec2[] box = [new(x, y), new(x + 3 * letters, y), new(x + 3 * letters, y + 1.4 * letters), new(x, y + 1.4 * letters)];
                foreach (var mark in Hatched([.. box], from, stretched, unit)) yield return mark;
                yield return new PathMark([.. box], Closed: true, Filled: false, Layers.Text, Stroke.Thin, Tone.Quiet);
                var said = $"{(stretched ? "stretched" : "shrunk")} {words}";
                yield return new TextMark(new(x + 3.6 * letters, y + 0.3 * letters), said, letters, Layers.Text);
                x += 5 * letters + Lettering.Width(said, letters);
            }
            y -= 2.4 * letters;
        }
    }

    /// <summary>The largest stretch and the largest shrink by their figures, where they are.</summary>
    static IEnumerable<Mark> Worst(Piece piece, double letters)
    {
        foreach (var stretched in new[] { true, false })
        {
            if (piece.Strains.Where(s => s.Strain > 0 == stretched && s.Share >= s_steps[0].From).MaxBy(s => s.Share) is not { } worst) continue;
            var middle = worst.Edge.Aggregate(Vec2.Zero, (sum, p) => sum + p) / worst.Edge.Length;
            var words = string.Create(CultureInfo.InvariantCulture, $"{(stretched ? "+" : "−")}{Math.Abs(worst.Strain) * 100:0.#} %");
            yield return new TextMark(middle, words, letters, Layers.Text, Anchor.Middle, Tone: worst.Share > 1 ? Tone.Warn : Tone.Ink);
        }
    }

    static IEnumerable<Mark> Hatched(ImmutableArray<Vec2> edge, double share, bool rising, double unit)
    {
        var step = s_steps.LastOrDefault(s => share >= s.From);
        if (step.Words is null || edge.Length < 3) yield break;
        var along = Vec2.Polar(rising ? Math.PI / 4 : -Math.PI / 4);
        var (low, high) = (edge.Min(p => along.Left.Dot(p)), edge.Max(p => along.Left.Dot(p)));
        // Lines keep to one grid, so that patches side by side hatch through.
        var apart = step.Apart * unit;
        for (var level = Math.Ceiling(low / apart) * apart; level < high; level += apart)
        {
            var cuts = new List<double>();
            for (int i = 0, j = edge.Length - 1; i < edge.Length; j = i++)
            {
                var (a, b) = (along.Left.Dot(edge[j]) - level, along.Left.Dot(edge[i]) - level);
                if ((a > 0) != (b > 0)) cuts.Add(along.Dot(edge[j] + (edge[i] - edge[j]) * (a / (a - b))));
            }
            cuts.Sort();
            for (var k = 0; k + 1 < cuts.Count; k += 2)
                yield return new LineMark(along * cuts[k] + along.Left * level, along * cuts[k + 1] + along.Left * level, Layers.Dimensions, Stroke.Thin, share >= 1 ? Tone.Warn : Tone.Accent);
        }
    }
}
