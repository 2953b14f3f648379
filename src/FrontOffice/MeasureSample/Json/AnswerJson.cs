using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>
/// An adjusted sample as one JSON object, mm and radians. Figures of the adjustment over all readings stand on top;
/// <c>without_gross_errors</c> is the same again with the gross readings left out, or null when there are none.
/// </summary>
static class AnswerJson
{
    public static string Write(MeasureResult result) => JsonWriting.Whole(json =>
    {
        json.WriteString("id", result.Sample.Id);
        json.WriteString("title", result.Sample.Title);
        WriteShape(json, result.Sample, result.Plan);
        WriteSnooping(json, result.Plan.Doubts);
        json.WriteObject("without_gross_errors", result.Plan.WithoutDoubtful, clean => WriteShape(json, result.Sample, clean));
        json.WriteObject("next_reading", result.Next, next => WriteNext(json, next.Enough, next.LargestStd, next.Words, next.Readings, n =>
            (KindRule.Of(n.Kind).Code, n.From, n.To, n.Expected, n.Instrument, n.Gain, n.Words)));
        json.WriteStrings("cautions", result.Cautions);
    });

    static void WriteShape(Utf8JsonWriter json, Sample sample, Plan plan)
    {
        json.WriteNumber("unknowns", plan.Unknowns);
        json.WriteNumber("datum_freedoms", plan.DatumFreedoms);
        json.WriteNumber("loose_freedoms", plan.LooseFreedoms);
        json.WriteNumber("readings_used", plan.Readings.Count(r => r.Used));
        json.WriteNumber("redundancy", plan.Redundancy);
        json.WriteFinite("weighted_sum_of_squares", plan.WeightedSumOfSquares);
        AnswerReadings.Write(json, plan.Readings, i => KindRule.Of(sample.Readings[i].Kind).Measure is Measure.Angle or Measure.Direction ? "rad" : "mm");
        AnswerSizes.Write(json, plan);
        WriteLoose(json, plan);
        WriteMirror(json, plan);
        WriteCoordinates(json, plan);
        WriteScales(json, plan);
        WriteTests(json, plan.Convergence, plan.Critical, plan.Global);
    }

    static void WriteLoose(Utf8JsonWriter json, Plan plan)
    {
        json.WriteList("loose", plan.Loose, group =>
        {
            json.WriteStrings("points", group.Ids);
            json.WriteNumber("free_motions", group.FreeMotions);
            json.WriteString("reason", group.Reason);
            json.WriteNumber("readings_missing_at_least", group.ReadingsMissing);
            json.WriteStartArray("motions");
            foreach (var motion in group.Motions)
            {
                json.WriteStartArray();
                foreach (var arrow in motion)
                {
                    json.WriteStartObject();
                    json.WriteString("id", arrow.Id);
                    json.WriteFinite("x", arrow.Move.X);
                    json.WriteFinite("y", arrow.Move.Y);
                    json.WriteFinite("grow", arrow.Grow);
                    json.WriteEndObject();
                }
                json.WriteEndArray();
            }
            json.WriteEndArray();
        });
    }

    /// <summary>The first second shape as <c>mirror</c>; all of them as <c>mirrors</c> when there are several.</summary>
    static void WriteMirror(Utf8JsonWriter json, Plan plan)
    {
        if (plan.Mirrors.IsEmpty)
        {
            json.WriteNull("mirror");
            return;
        }
        json.WriteStartObject("mirror");
        WriteMirror(json, plan.Mirrors[0]);
        json.WriteEndObject();
        if (plan.Mirrors.Length > 1) json.WriteList("mirrors", plan.Mirrors, m => WriteMirror(json, m));
    }

    static void WriteMirror(Utf8JsonWriter json, Mirror mirror)
    {
        json.WriteStrings("points_that_flip", mirror.Flips);
        json.WriteStrings("about_line_through", mirror.About);
        json.WriteFinite("weighted_sum_of_squares_second", mirror.WeightedSumOfSquares);
        WriteDistances(json, "second_solution_distances", mirror.Second);
        WriteDeciding(json, mirror.Deciding);
    }

    static void WriteCoordinates(Utf8JsonWriter json, Plan plan) => json.WriteList("coordinates", plan.Features, f =>
    {
        var (sine, cosine) = Math.SinCos(f.Ellipse.Turn);
        json.WriteString("id", f.Id);
        json.WriteFinite("x_mm", f.At.X);
        json.WriteFinite("y_mm", f.At.Y);
        json.WriteFinite("std_x_mm", f.Loose ? null : double.Hypot(f.Ellipse.Major * cosine, f.Ellipse.Minor * sine));
        json.WriteFinite("std_y_mm", f.Loose ? null : double.Hypot(f.Ellipse.Major * sine, f.Ellipse.Minor * cosine));
        json.WriteBoolean("loose", f.Loose);
        if (f.Condition != FeatureCondition.Sound) json.WriteString("condition", f.Condition.ToString().ToLowerInvariant());
    });

    /// <summary>Only where a frame has a scale of its own.</summary>
    static void WriteScales(Utf8JsonWriter json, Plan plan)
    {
        if (plan.Scales.IsEmpty) return;
        json.WriteList("frames", plan.Scales, s =>
        {
            json.WriteString("name", s.Name);
            json.WriteFinite("scale", s.Scale.Value);
            json.WriteFinite("scale_std", s.Scale.Std);
        });
    }

    internal static void WriteTests(Utf8JsonWriter json, Convergence convergence, double critical, GlobalTest global)
    {
        json.WriteBoolean("converged", convergence.Converged);
        json.WriteString("convergence", convergence.Words);
        json.WriteFinite("critical_value", critical);
        json.WriteStartObject("global_test");
        json.WriteFinite("statistic", global.Statistic);
        json.WriteNumber("redundancy", global.Redundancy);
        json.WriteFinite("low", global.Low);
        json.WriteFinite("high", global.High);
        json.WriteBoolean("passes", global.Passes);
        json.WriteEndObject();
    }

    internal static void WriteSnooping(Utf8JsonWriter json, Doubts doubts)
    {
        json.WriteNumbers("gross_error_indices", doubts.Indices);
        json.WriteStartArray("gross_error_groups");
        foreach (var group in doubts.Groups) json.WriteNumbers(group);
        json.WriteEndArray();
        json.WriteBoolean("gross_errors_confirmed", doubts.Confirmed);
        json.WriteString("gross_errors_words", doubts.Words);
        json.WriteList("one_at_a_time", doubts.Steps, step =>
        {
            json.WriteNumbers("removed_so_far", step.Removed);
            json.WriteFinite("weighted_sum_of_squares", step.WeightedSumOfSquares);
            json.WriteNumber("redundancy", step.Redundancy);
            json.WriteFinite("critical_value", step.Critical);
            if (step.Largest is { } index) json.WriteLargest(index, step.Value, step.TiedWith);
            else json.WriteNull("largest_normalised_residual");
        });
    }

    internal static void WriteNext<T>(
        Utf8JsonWriter json, bool enough, double largestStd, string words, IEnumerable<T> readings,
        Func<T, (string Kind, string From, string? To, double Expected, string Instrument, double Gain, string Words)> told)
    {
        json.WriteBoolean("enough", enough);
        json.WriteFinite("largest_std_mm", largestStd);
        json.WriteString("words", words);
        json.WriteList("readings", readings, reading =>
        {
            var n = told(reading);
            json.WriteString("kind", n.Kind);
            json.WriteString("from", n.From);
            json.WriteString("to", n.To);
            json.WriteFinite("expected", n.Expected);
            json.WriteString("instrument", n.Instrument);
            json.WriteFinite("gain", n.Gain);
            json.WriteString("words", n.Words);
        });
    }

    internal static void WriteDistances(Utf8JsonWriter json, string name, IEnumerable<PairDistance> distances) => json.WriteList(name, distances, d =>
    {
        json.WritePair(d.From, d.To);
        json.WriteFinite("distance_mm", d.Distance);
        json.WriteFinite("std_mm", d.Std);
    });

    internal static void WriteDeciding(Utf8JsonWriter json, IEnumerable<Deciding> deciding) => json.WriteList("deciding_readings", deciding, d =>
    {
        json.WritePair(d.From, d.To);
        json.WriteFinite("first_mm", d.First);
        json.WriteFinite("second_mm", d.Second);
    });
}
