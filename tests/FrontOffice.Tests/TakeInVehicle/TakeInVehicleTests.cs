using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.TakeInVehicle;

public class TakeInVehicleTests
{
    [Fact]
    public void The_demonstration_vehicle_is_taken_in_whole()
    {
        var taken = Taken();
        Assert.InRange(taken.File.Parts.Length, 35, 45);
        Assert.Equal(5, taken.File.Systems.Length);
        Assert.Equal(3, taken.Sketches.Length);
        Assert.Equal(taken.Readings.Length, taken.Readings.Select(r => r.Id).Distinct().Count());
    }

    [Fact]
    public void Taken_in_twice_the_rows_are_the_same() => Assert.Equal(Taken().Readings, Taken().Readings);

    [Fact]
    public void What_is_kept_makes_the_same_sample_as_the_sheet()
    {
        var taken = Taken();
        foreach (var sketch in taken.Sketches)
        {
            var sample = taken.File.Samples.Single(s => s.Id == sketch.Id);
            var read = SampleFile.Read(Demo.Text(taken.File.Sheets[sample.Id])).Value;
            var stored = StoredSample.Of(sample, sketch, [.. taken.Readings.Where(r => r.SampleId == sample.Id)], taken.Instruments);
            Assert.Empty(stored.Refused);
            Assert.Equal(read.Features, stored.Sample!.Features);
            Assert.Equal(read.Readings.Select(r => (r.Kind, r.From, r.To, r.Value, r.Sigma)), stored.Sample.Readings.Select(r => (r.Kind, r.From, r.To, r.Value, r.Sigma)));
        }
    }

    [Fact]
    public void Sizes_to_identify_are_kept_too()
    {
        var taken = Taken();
        var stud = taken.File.Samples.Single(s => taken.File.Sheets[s.Id].EndsWith("stud.csv", StringComparison.Ordinal));
        var stored = StoredSizes.Of(taken.Readings.Where(r => r.SampleId == stud.Id)).Value;
        var read = SizeSheet.Read(Demo.Bytes("samples/stud.csv")).Value;
        Assert.Equal(read.SelectMany(q => q.Measurements), stored.SelectMany(q => q.Measurements));
    }

    [Fact]
    public void A_bad_sheet_is_named_and_nothing_is_taken_in()
    {
        var refused = Assert.Throws<RefusedException>(() => Run(name => Demo.Sheet(name)?.Replace("diameter,H1", "diameter,H99")));
        Assert.Contains("dynamo-plate.csv, line", refused.Message);
        Assert.Contains("H99", refused.Message);
    }

    [Fact]
    public void The_folded_part_beside_a_sheet_is_its_samples()
    {
        var taken = Taken();
        var folded = Assert.Single(taken.Folded);
        Assert.Equal("samples/lamp-bracket.csv", taken.File.Sheets[folded.Id]);
        Assert.Equal(Demo.Text("samples/lamp-bracket.json"), folded.Text);
    }

    [Theory]
    [InlineData("\"bends\": [", "\"bends\": ", "samples/lamp-bracket.json, line 25, ")]
    [InlineData("16 SWG", "16 oz", "thickness")]
    [InlineData("\"child\": \"stiffener\"", "\"child\": \"gusset\"", "gusset")]
    public void A_bad_folded_part_is_named_and_nothing_is_taken_in(string good, string bad, string told)
    {
        var refused = Assert.Throws<RefusedException>(() => Run(name => name.EndsWith(".json", StringComparison.Ordinal) ? Demo.Sheet(name)?.Replace(good, bad) : Demo.Sheet(name)));
        Assert.StartsWith("samples/lamp-bracket.json, ", refused.Message);
        Assert.Contains(told, refused.Message);
    }

    [Fact]
    public void A_sheet_that_is_not_there_is_told() =>
        Assert.Contains("name a file that lies beside the tables", Assert.Throws<RefusedException>(() => Run(_ => null)).Message);

    static TakeInResult Taken() => Run(Demo.Sheet);

    static TakeInResult Run(Func<string, string?> sheet) => WitnessMark.FrontOffice.TakeInVehicle.TakeInVehicle.Run(
        new(Demo.Text("vehicle.csv"), Demo.Text("parts.csv"), Demo.Text("samples.csv"), sheet, DateTimeOffset.UnixEpoch));
}
