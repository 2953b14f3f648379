using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Picture;

/// <summary>Doubtful readings where they were taken: a line between two features, a ring round one.</summary>
static class Suspects
{
    // Beside the features, or a reading along an edge would vanish in it, mm.
    const double Aside = 2.5;

    public static void Draw(Board board, Plan plan, Sample sample, View view)
    {
        var places = plan.Features.ToDictionary(f => f.Id);
        foreach (var index in plan.Doubts.Indices)
        {
            var reading = sample.Readings.FirstOrDefault(r => r.Index == index);
            if (reading is null || !places.TryGetValue(reading.From, out var from)) continue;
            var label = new Label($"{index + 1}?", Tone: Tone.Warn);
            if (reading.To is { } to && places.TryGetValue(to, out var other))
            {
                Between(board, view.At(from.At), view.At(other.At), label);
            }
            else
            {
                var rim = (from.Kind == FeatureKind.Hole ? (from.Size?.Value ?? 0) / 2 * view.Scale : 0) + 1.5;
                board.Circle(view.At(from.At), rim, Layers.Dimensions, Stroke.Thin, Tone.Warn);
                Leader.Beside(board, view.At(from.At), rim, label);
            }
        }
    }

    static void Between(Board board, Vec2 from, Vec2 to, Label label)
    {
        var aside = (to - from).Left.Unit * Aside;
        var (a, b) = (from + aside, to + aside);
        board.Line(a, b, Layers.Dimensions, Stroke.Dimension, Tone.Warn);
        board.Arrow(a, a - b, Layers.Dimensions, Tone.Warn);
        board.Arrow(b, b - a, Layers.Dimensions, Tone.Warn);
        Leader.Beside(board, (a + b) / 2, 0.5, label);
    }
}
