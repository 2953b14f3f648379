using System.Text.Json;

namespace WitnessMark.Tests.Cli.Photo;

public class PhotoTests
{
    const string Plate = "demo/photos/horn-plate.jpg", Trace = "demo/photos/horn-plate.json";

    [Fact]
    [Truth(Grade.Property, "rendered from a plate with holes of 8.7 and 32 mm, 120 mm long (demo/README.md): sizes and distances within their ±")]
    public void The_demonstration_photograph_gives_the_plate_s_sizes()
    {
        using var place = new Place();
        var folder = place.At("true");
        var told = Told.By("photo", "solve", Plate, "--trace", Trace, "--out", folder, "--json");
        Assert.Equal((0, ""), (told.Code, told.Error));
        using var answer = JsonDocument.Parse(told.Out);
        var root = answer.RootElement;
        Assert.Equal(44, root.GetProperty("marks_found").GetInt32() + root.GetProperty("marks_set_aside").GetInt32());
        Assert.Empty(root.GetProperty("not_found").EnumerateArray());
        var scale = root.GetProperty("scale_std").GetDouble();
        var holes = root.GetProperty("holes").EnumerateArray().ToDictionary(h => h.GetProperty("name").GetString()!);
        foreach (var (name, diameter) in new[] { ("H1", 8.7), ("H2", 8.7), ("H3", 8.7), ("H4", 32.0) })
        {
            var std = Math.Sqrt(Math.Pow(holes[name].GetProperty("diameter_std_mm").GetDouble(), 2) + Math.Pow(scale * diameter, 2));
            Assert.InRange(Math.Abs(holes[name].GetProperty("diameter_mm").GetDouble() - diameter) / std, 0, 3.5);
        }
        double X(string h) => holes[h].GetProperty("centre").GetProperty("x_mm").GetDouble();
        double Y(string h) => holes[h].GetProperty("centre").GetProperty("y_mm").GetDouble();
        Assert.InRange(Math.Sqrt(Math.Pow(X("H1") - X("H2"), 2) + Math.Pow(Y("H1") - Y("H2"), 2)) - 40, -0.2, 0.2);
        var names = root.GetProperty("files").EnumerateArray().Select(f => Path.GetFileName(f.GetString())).ToArray();
        Assert.Equal(["horn-plate-true.png", "horn-plate-seen.svg", "horn-plate-readings.csv"], names);
        var plan = Told.By("survey", "solve", Path.Combine(folder, "horn-plate-readings.csv"), "--json");
        Assert.Equal((0, ""), (plan.Code, plan.Error));
        Assert.Contains("\"H4\"", plan.Out);

        // What the survey says of one photograph alone, and with a true and a false calliper reading beside it.
        string Surveyed(string more)
        {
            var sheet = Path.Combine(folder, "beside.csv");
            File.WriteAllText(sheet, File.ReadAllText(Path.Combine(folder, "horn-plate-readings.csv")) + more);
            return Told.By("survey", "solve", sheet).Out;
        }
        var alone = Surveyed("");
        Assert.Contains("redundancy 0", alone);
        Assert.Contains("Nothing checks these readings", alone);
        Assert.DoesNotContain("fit one another", alone);
        var beside = Surveyed("centre distance,H1,H2,40.00,± 0.05\n");
        Assert.Contains("redundancy 1", beside);
        Assert.DoesNotContain("!", beside);
        Assert.Contains("!", Surveyed("centre distance,H1,H2,41.00,± 0.05\n"));
    }

    [Fact]
    [Truth(Grade.Property, "words name the target, the residual in mm, a ± in every row")]
    public void It_is_told_in_words()
    {
        var told = Told.By("photo", "solve", Plate, "--trace", Trace);
        Assert.Equal((0, ""), (told.Code, told.Error));
        Assert.Contains("target A4", told.Out);
        Assert.Contains("they fit within 0.", told.Out);
        // A residual of a hundredth of a mm asks nothing of a person.
        Assert.DoesNotContain("miss their places", told.Out);
        Assert.Matches(@"H4 .*⌀ 3[12]\.\d\d ± 0\.\d\d", told.Out);
    }

    [Fact]
    [Truth(Grade.Property, "a target sheet is a PDF and its words say what to measure")]
    public void The_target_sheet_is_printed()
    {
        using var place = new Place();
        var told = Told.By("photo", "target", "--paper", "letter", "--out", place.At("target.pdf"));
        Assert.Equal((0, ""), (told.Code, told.Error));
        Assert.Contains("Measure both check lines", told.Out);
        Assert.Equal("%PDF"u8.ToArray(), File.ReadAllBytes(place.At("target.pdf"))[..4]);
    }

    [Theory]
    [InlineData("photo solve demo/photos/no-such.jpg", "name a file that is there")]
    [InlineData("photo solve demo/samples/pin.csv", "send a JPEG, PNG or WebP picture")]
    [InlineData("photo solve " + Plate + " --target a5", "a4, a3 or letter")]
    [InlineData("photo solve " + Plate + " --check-x 99.8", "both check lines")]
    [InlineData("photo solve " + Plate + " --check-x 9.98 --check-y 100", "80 to 120")]
    [InlineData("photo solve " + Plate + " --rectangle 100 --corners 1,2 3,4 5,6 7,8", "width and height")]
    [InlineData("photo solve " + Plate + " --target a4 --corners 1,2 3,4 5,6 7;8", "412,1830")]
    [InlineData("photo solve " + Plate + " --trace demo/samples/pin.csv", "not complete JSON")]
    [InlineData("photo target --paper a0", "a4, a3 or letter")]
    [Truth(Grade.Property, "each is refused in one sentence with exit code 2")]
    public void Bad_input_is_one_sentence(string command, string words)
    {
        var told = Told.By(command.Split(' '));
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Single(told.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains(words, told.Error);
    }

    [Fact]
    [Truth(Grade.Property, "a rectangle whose corners are given makes the picture true without a target")]
    public void Corners_by_hand_stand_in_for_the_target()
    {
        // The frame's own corners as the camera of the demonstration sees them: two lengths of the frame, 190 by 270 mm.
        var told = Told.By("photo", "solve", Plate, "--rectangle", "190x270", "--json", "--corners", "270,1656", "1230,1656", "1137,471", "363,471");
        Assert.Equal((0, ""), (told.Code, told.Error));
        using var answer = JsonDocument.Parse(told.Out);
        Assert.Equal(4, answer.RootElement.GetProperty("marks_found").GetInt32());
    }
}
