using System.Text;
using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>
/// An adjusted sample as one JSON object, mm and radians. Figures of the adjustment over all readings stand on top;
/// <c>without_gross_errors</c> is the same again with the gross readings left out, or null when there are none.
/// </summary>
static class AnswerJson
{
    static readonly JsonWriterOptions Indented = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(MeasureResult result)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Indented))
        {
            json.WriteStartObject();
            json.WriteString("id", result.Sample.Id);
            json.WriteString("title", result.Sample.Title);
            WriteShape(json, result.Sample, result.Plan);
            WriteSnooping(json, result.Plan.Doubts);
            json.WritePropertyName("without_gross_errors");
            if (result.Plan.WithoutDoubtful is { } clean)
            {
                json.WriteStartObject();
                WriteShape(json, result.Sample, clean);
                json.WriteEndObject();
            }
            else
            {
                json.WriteNullValue();
            }
            WriteNext(json, result.Next);
            json.WriteStrings("cautions", result.Cautions);
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    static void WriteShape(Utf8JsonWriter json, Sample sample, Plan plan)
    {
        json.WriteNumber("unknowns", plan.Unknowns);
        json.WriteNumber("datum_freedoms", plan.DatumFreedoms);
        json.WriteNumber("loose_freedoms", plan.LooseFreedoms);
        json.WriteNumber("readings_used", plan.Readings.Count(r => r.Used));
        json.WriteNumber("redundancy", plan.Redundancy);
        json.WriteFinite("weighted_sum_of_squares", plan.WeightedSumOfSquares);
        AnswerReadings.Write(json, sample, plan);
        AnswerSizes.Write(json, plan);
        WriteLoose(json, plan);
        WriteMirror(json, plan);
        WriteCoordinates(json, plan);
        WriteScales(json, plan);
        WriteTests(json, plan);
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
        json.WriteList("second_solution_distances", mirror.Second, d =>
        {
            json.WritePair(d.From, d.To);
            json.WriteFinite("distance_mm", d.Distance);
            json.WriteFinite("std_mm", d.Std);
        });
        json.WriteList("deciding_readings", mirror.Deciding, d =>
        {
            json.WritePair(d.From, d.To);
            json.WriteFinite("first_mm", d.First);
            json.WriteFinite("second_mm", d.Second);
        });
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

    static void WriteTests(Utf8JsonWriter json, Plan plan)
    {
        json.WriteBoolean("converged", plan.Convergence.Converged);
        json.WriteString("convergence", plan.Convergence.Words);
        json.WriteFinite("critical_value", plan.Critical);
        json.WriteStartObject("global_test");
        json.WriteFinite("statistic", plan.Global.Statistic);
        json.WriteNumber("redundancy", plan.Global.Redundancy);
        json.WriteFinite("low", plan.Global.Low);
        json.WriteFinite("high", plan.Global.High);
        json.WriteBoolean("passes", plan.Global.Passes);
        json.WriteEndObject();
    }

    static void WriteSnooping(Utf8JsonWriter json, Doubts doubts)
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

    static void WriteNext(Utf8JsonWriter json, NextAdvice? next)
    {
        if (next is null)
        {
            json.WriteNull("next_reading");
            return;
        }
        json.WriteStartObject("next_reading");
        json.WriteBoolean("enough", next.Enough);
        json.WriteFinite("largest_std_mm", next.LargestStd);
        json.WriteString("words", next.Words);
        json.WriteList("readings", next.Readings, n =>
        {
            json.WriteString("kind", KindRule.Of(n.Kind).Code);
            json.WriteString("from", n.From);
            json.WriteString("to", n.To);
            json.WriteFinite("expected", n.Expected);
            json.WriteString("instrument", n.Instrument);
            json.WriteFinite("gain", n.Gain);
            json.WriteString("words", n.Words);
        });
        json.WriteEndObject();
    }
}
