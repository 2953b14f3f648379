using System.Text.Json;
using WitnessMark.FrontOffice.MeasureSample;

namespace WitnessMark.Tests.FrontOffice.MeasureSample;

/// <summary>The whole road from a survey file to the printed answer, held to answers computed elsewhere.</summary>
[Truth(Grade.SecondImplementation, "truth/survey: weighted least squares in 45-digit arithmetic, checked there by Householder QR in doubles")]
public class AnswerTests
{
    /// <summary>Relative; the file prints twelve digits.</summary>
    const double Distance = 1e-7;

    /// <summary>Relative.</summary>
    const double Std = 1e-5;

    /// <summary>The README of the data calls readings checked less than this poorly conditioned.</summary>
    const double BarelyChecked = 1e-3;

    public static TheoryData<string> Plates => ["plate-01-clean", "plate-02-one-gross", "plate-03-loose-hole", "plate-04-mirror"];

    [Theory]
    [MemberData(nameof(Plates))]
    public void The_adjustment_of_all_readings_agrees(string name)
    {
        var (ours, theirs) = Answers(name);
        SameShape(theirs, ours);
    }

    [Theory]
    [MemberData(nameof(Plates))]
    public void Gross_errors_agree(string name)
    {
        var (ours, theirs) = Answers(name);
        Assert.Equal(Indices(theirs), Indices(ours));
        var clean = ours.GetProperty("without_gross_errors");
        if (theirs.TryGetProperty("without_gross_errors", out var wanted)) SameShape(wanted, clean);
        else Assert.Equal(JsonValueKind.Null, clean.ValueKind);
    }

    [Fact]
    public void Steps_of_snooping_agree()
    {
        var (ours, theirs) = Answers("plate-02-one-gross");
        var (found, wanted) = (Items(ours, "one_at_a_time"), Items(theirs, "one_at_a_time"));
        Assert.Equal(wanted.Count, found.Count);
        foreach (var (w, f) in wanted.Zip(found))
        {
            Close(w, f, "weighted_sum_of_squares", 1e-8);
            Close(w.GetProperty("largest_normalised_residual"), f.GetProperty("largest_normalised_residual"), "value", Std);
            Assert.Equal(Text(w.GetProperty("largest_normalised_residual"), "index"), Text(f.GetProperty("largest_normalised_residual"), "index"));
        }
    }

    [Fact]
    public void Loose_features_agree()
    {
        var (ours, theirs) = Answers("plate-03-loose-hole");
        Assert.Equal(Pairs(theirs), Pairs(ours));
        var (wanted, found) = (Assert.Single(Items(theirs, "loose")), Assert.Single(Items(ours, "loose")));
        Assert.Equal(Strings(wanted, "points"), Strings(found, "points"));
        Assert.Equal(Text(wanted, "free_motions"), Text(found, "free_motions"));
        Assert.Equal(Text(wanted, "readings_missing_at_least"), Text(found, "readings_missing_at_least"));
    }

    [Fact]
    public void The_mirror_shape_agrees()
    {
        var (ours, theirs) = Answers("plate-04-mirror");
        var (wanted, found) = (theirs.GetProperty("mirror"), ours.GetProperty("mirror"));
        Assert.Equal(Strings(wanted, "points_that_flip"), Strings(found, "points_that_flip"));
        Assert.Equal(Strings(wanted, "about_line_through").Order(), Strings(found, "about_line_through").Order());
        Close(wanted, found, "weighted_sum_of_squares_second", 1e-8);
        var second = Items(found, "second_solution_distances").ToDictionary(Pair);
        foreach (var w in Items(wanted, "second_solution_distances"))
        {
            Close(w, second[Pair(w)], "distance_mm", Distance);
            Close(w, second[Pair(w)], "std_mm", Std);
        }
        foreach (var (w, f) in Items(wanted, "deciding_readings").Zip(Items(found, "deciding_readings")))
        {
            Assert.Equal(Pair(w), Pair(f));
            Close(w, f, "first_mm", Distance);
            Close(w, f, "second_mm", Distance);
        }
    }

    static void SameShape(JsonElement wanted, JsonElement found)
    {
        foreach (var count in (string[])["unknowns", "datum_freedoms", "loose_freedoms", "readings_used", "redundancy"])
            Assert.Equal(Text(wanted, count), Text(found, count));
        Close(wanted, found, "weighted_sum_of_squares", 1e-8);
        SameList(wanted, found, "distances", ("distance_mm", Distance), ("std_mm", Std));
        SameList(wanted, found, "diameters", ("diameter_mm", Distance), ("std_mm", Std));
        foreach (var (w, f) in Items(wanted, "readings").Zip(Items(found, "readings")))
        {
            Assert.Equal(Text(w, "index"), Text(f, "index"));
            Close(w, f, "adjusted_mm", Distance);
            Assert.Equal(w.GetProperty("redundancy_number").GetDouble(), f.GetProperty("redundancy_number").GetDouble(), 1e-7);
            Assert.Equal(w.GetProperty("residual_mm").GetDouble(), f.GetProperty("residual_mm").GetDouble(), 1e-7);
            Assert.Equal(w.GetProperty("normalised_residual").ValueKind, f.GetProperty("normalised_residual").ValueKind);
            if (w.GetProperty("redundancy_number").GetDouble() > BarelyChecked)
                Assert.Equal(w.GetProperty("normalised_residual").GetDouble(), f.GetProperty("normalised_residual").GetDouble(), 1e-5);
        }
        Assert.Equal(Items(wanted, "readings").Count, Items(found, "readings").Count);
    }

    static void SameList(JsonElement wanted, JsonElement found, string list, params (string Field, double Relative)[] fields)
    {
        var (w, f) = (Items(wanted, list), Items(found, list));
        Assert.Equal(w.Select(Pair), f.Select(Pair));
        foreach (var (a, b) in w.Zip(f))
            foreach (var (field, relative) in fields) Close(a, b, field, relative);
    }

    static void Close(JsonElement wanted, JsonElement found, string field, double relative)
    {
        var (w, f) = (wanted.GetProperty(field).GetDouble(), found.GetProperty(field).GetDouble());
        Assert.True(Math.Abs(w - f) <= relative * Math.Abs(w), $"{field}: {w:R} is wanted, {f:R} is found in {found}");
    }

    static (JsonElement Ours, JsonElement Theirs) Answers(string name)
    {
        var bytes = File.ReadAllBytes($"truth/survey/{name}.json");
        var ours = WitnessMark.FrontOffice.MeasureSample.MeasureSample.Run(new MeasureRequest(SampleFile.Read(bytes).Value)).ToJson();
        return (JsonDocument.Parse(ours).RootElement, JsonDocument.Parse(bytes).RootElement.GetProperty("answers"));
    }

    static List<JsonElement> Items(JsonElement element, string list) =>
        element.TryGetProperty(list, out var found) ? [.. found.EnumerateArray()] : [];

    static string Pair(JsonElement e) => e.TryGetProperty("id", out var id) ? id.GetString()! : $"{e.GetProperty("from")}-{e.GetProperty("to")}";

    static string[] Strings(JsonElement e, string list) => [.. Items(e, list).Select(i => i.GetString()!)];

    static string[] Pairs(JsonElement e) => [.. Items(e, "undetermined_distances").Select(p => $"{p[0]}-{p[1]}")];

    static int[] Indices(JsonElement e) => [.. Items(e, "gross_error_indices").Select(i => i.GetInt32())];

    static string Text(JsonElement e, string field) => e.GetProperty(field).ToString();
}
