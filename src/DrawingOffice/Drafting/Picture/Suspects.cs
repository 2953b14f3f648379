using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Picture;

/// <summary>Doubtful readings where they were taken: a line between two features, a ring round one.</summary>
static class Suspects
{
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
                board.Line(view.At(from.At), view.At(other.At), Layers.Dimensions, Stroke.Dimension, Tone.Warn);
                Leader.Beside(board, (view.At(from.At) + view.At(other.At)) / 2, 0.5, label);
            }
            else
            {
                var rim = (from.Kind == FeatureKind.Hole ? (from.Size?.Value ?? 0) / 2 * view.Scale : 0) + 1.5;
                board.Circle(view.At(from.At), rim, Layers.Dimensions, Stroke.Thin, Tone.Warn);
                Leader.Beside(board, view.At(from.At), rim, label);
            }
        }
    }
}
