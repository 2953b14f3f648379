using System.Text.Json;
using WitnessMark.DrawingOffice.Drafting.Solid;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSample.Json;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSolid.Json;

/// <summary>
/// An adjusted sample in space as one JSON object, mm and radians, with the fields of a flat one where they mean the same
/// (docs/guide/command-line.md). <c>without_gross_errors</c> is the same again with the gross readings left out, or null.
/// </summary>
static class SolidAnswer
{
    public static string Write(SolidResult result) => JsonWriting.Whole(json =>
    {
        var plan = result.Plan;
        json.WriteString("id", result.Sample.Id);
        json.WriteString("title", result.Sample.Title);
        WriteShape(json, plan, plan.WithoutDoubtful is null ? result.Part : WithDoubtful(plan));
        AnswerJson.WriteSnooping(json, plan.Doubts);
        json.WriteObject("without_gross_errors", plan.WithoutDoubtful, clean => WriteShape(json, clean, result.Part));
        json.WriteObject("next_reading", result.Next, next => AnswerJson.WriteNext(json, next.Enough, next.LargestStd, next.Words, next.Readings, n =>
            (SolidRule.Of(n.Kind).Code, n.From, n.To, n.Expected, n.Instrument, n.Gain, n.Words)));
        json.WriteStrings("cautions", result.Cautions);
    });

    /// <summary>The shape that all readings give together; null while they do not settle.</summary>
    static SolidPart? WithDoubtful(SolidPlan plan) => plan.Convergence.Converged ? FromSolidPlan.Of(plan with { WithoutDoubtful = null }) : null;

    static void WriteShape(Utf8JsonWriter json, SolidPlan plan, SolidPart? part)
    {
        json.WriteNumber("unknowns", plan.Unknowns);
        json.WriteNumber("datum_freedoms", plan.DatumFreedoms);
        json.WriteNumber("loose_freedoms", plan.LooseFreedoms);
        json.WriteNumber("readings_used", plan.Readings.Count(r => r.Used));
        json.WriteNumber("redundancy", plan.Redundancy);
        json.WriteFinite("weighted_sum_of_squares", plan.WeightedSumOfSquares);
        AnswerReadings.Write(json, plan.Readings, i => SolidRule.Of(plan.Sample.Readings[i].Kind).Unit);
        AnswerJson.WriteDistances(json, "distances", plan.Distances());
        json.WriteList("features", plan.Features, f => WriteFeature(json, f));
        json.WriteList("loose", plan.Loose, group =>
        {
            json.WriteStrings("features", group.Ids);
            json.WriteNumber("free_motions", group.FreeMotions);
            json.WriteString("reason", group.Reason);
            json.WriteNumber("readings_missing_at_least", group.ReadingsMissing);
        });
        json.WriteList("mirrors", plan.Mirrors, mirror =>
        {
            json.WriteStrings("features_that_flip", mirror.Flips);
            json.WriteStrings("about", mirror.About);
            json.WriteFinite("weighted_sum_of_squares_second", mirror.WeightedSumOfSquares);
            AnswerJson.WriteDeciding(json, mirror.Deciding);
        });
        json.WriteBoolean("hand_told", plan.Hand.Told);
        json.WriteString("hand", plan.Hand.Words);
        WriteFaces(json, part);
        AnswerJson.WriteTests(json, plan.Convergence, plan.Critical, plan.Global);
    }

    static void WriteFeature(Utf8JsonWriter json, SolidPlaced f)
    {
        json.WriteString("id", f.Id);
        json.WriteString("kind", SolidWords.Word(f.Kind));
        WriteThree(json, "", "_mm", f.At);
        if (f.Direction != Vec3.Zero)
        {
            WriteThree(json, "way_", "", f.Direction);
            json.WriteFinite("std_way_rad", f.Loose ? null : f.DirectionStd);
        }
        if (f.Kind is SolidKind.Point or SolidKind.Hole) json.WriteFinite("std_largest_mm", f.Loose ? null : f.Ellipsoid.Major.Length);
        WriteSize(json, "diameter", f.Size);
        WriteSize(json, "length", f.Length);
        json.WriteBoolean("loose", f.Loose);
    }

    static void WriteThree(Utf8JsonWriter json, string before, string after, Vec3 v)
    {
        json.WriteFinite($"{before}x{after}", v.X);
        json.WriteFinite($"{before}y{after}", v.Y);
        json.WriteFinite($"{before}z{after}", v.Z);
    }

    static void WriteSize(Utf8JsonWriter json, string name, Uncertain? size)
    {
        if (size is not { } s) return;
        json.WriteFinite($"{name}_mm", s.Value);
        json.WriteFinite($"{name}_std_mm", s.Std);
    }

    static void WriteFaces(Utf8JsonWriter json, SolidPart? part)
    {
        json.WriteList("setting_angles", part?.Pairs.Where(p => p.Angle is not null) ?? [], p =>
        {
            json.WritePair(p.A, p.B);
            json.WriteFinite("angle_rad", p.Angle!.Value.Value);
            json.WriteFinite("std_rad", p.Angle.Value.Std);
        });
        json.WriteList("parallel_faces", part?.Pairs.Where(p => p.Apart is not null) ?? [], p =>
        {
            json.WritePair(p.A, p.B);
            json.WriteFinite("apart_mm", p.Apart!.Value.Value);
            json.WriteFinite("std_mm", p.Apart.Value.Std);
        });
        json.WriteList("heights", part?.Heights.Where(h => h.Height is not null) ?? [], h =>
        {
            json.WriteString("face", h.Face);
            json.WriteString("id", h.Id);
            json.WriteFinite("height_mm", h.Height!.Value.Value);
            json.WriteFinite("std_mm", h.Height.Value.Std);
        });
    }
}
