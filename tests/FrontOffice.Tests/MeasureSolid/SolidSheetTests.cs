using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.MeasureSolid.Rows;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.Tests.FrontOffice.MeasureSolid;

public class SolidSheetTests
{
    const string Good = """
        sample,angle,An angle
        units,mm
        feature,kind,on,from,to,x,y,z,way,size
        A,face,,,,20,10,0,up
        B,face,,,,20,20,10,0 -1 0.2
        E1,edge,,A,B
        P1,corner,A,,,0,0,0
        P2,corner,A,,,40,0,0
        H1,hole,B,,,20,20,12,,8
        T1,round,,,,0,0,30,right,12
        S1,set-up,,,,,,,up
        kind,from,to,value,instrument,at,pin,frame,note
        distance,P1,P2,1 9/16 in,rule
        height,A,S1,31.5,height gauge,P1
        height over pin,H1,S1,44.02; 44.04,height gauge,,7.98
        centre to face,P1,B,20.1 ± 0.2
        angle,A,B,101.5°,protractor
        picked on face,H1,B,x 20.1 y -12,scan,,,photo
        square,E1,T1,± 0.5°
        on,P2,B
        """;

    static Parsed<SolidSample> Read(string text) => SolidFile.Read(text);

    [Fact]
    [Truth(Grade.Property, "each cell is what the person wrote, in mm and radians")]
    public void Reads_cells_as_written()
    {
        var sample = Read(Good).Value;
        Assert.Equal(("angle", "An angle", 8, 8), (sample.Id, sample.Title, sample.Features.Length, sample.Readings.Length));
        Assert.Equal(1.5625 * 25.4, sample.Readings[0].Value, 12);
        Assert.Equal("P1", sample.Readings[1].At);
        Assert.Equal((44.03, 7.98), (Math.Round(sample.Readings[2].Value, 9), sample.Readings[2].Pin));
        Assert.Equal(0.1, sample.Readings[3].Sigma, 12);
        Assert.Equal(101.5 * Math.PI / 180, sample.Readings[4].Value, 12);
        Assert.Equal((20.1, -12, "photo"), (sample.Readings[5].Value, sample.Readings[5].ValueY, sample.Readings[5].Frame));
        Assert.True(sample.Readings[7].Exact);
        Assert.Equal(new Vec3(0, -1, 0.2), sample.Features[1].SketchDirection);
        Assert.Equal(("A", "B"), (sample.Features[2].From, sample.Features[2].To));
    }

    [Theory]
    [Truth(Grade.Property, "one sentence with the line, the field, what stands there and what would be right; nothing is taken over")]
    [InlineData("P2,corner,A", "P2,corner,Q", "line 8, on: \"Q\" is not accepted; name a face that stands before it.")]
    [InlineData("E1,edge,,A,B", "E1,edge,,A,", "line 6, to: nothing is given; give both corners, both faces or neither.")]
    [InlineData("T1,round", "T1,blob", "line 10, kind: \"blob\" is not accepted; write corner, hole, face, edge, round or set-up.")]
    [InlineData("0 -1 0.2", "sideways", "line 5, way: \"sideways\" is not accepted; write up,")]
    [InlineData("P1,corner,A,,,0,0,0", "P1,corner,A,,,0,0", "line 7, z: nothing is given; give all three places of the sketch or none.")]
    [InlineData("distance,P1,P2,1 9/16 in", "distance,P1,A,1 9/16 in", "line 13, to: \"A\" is not accepted; it is a face, and distance takes a corner or a hole here.")]
    [InlineData("distance,P1,P2,1 9/16 in", "distance,P1,p2,1 9/16 in", "line 13, to: \"p2\" is not accepted; name a corner or a hole that is among the features, perhaps P2.")]
    [InlineData("1 9/16 in", "1 9/16 furlong", "line 13, value")]
    [InlineData("101.5°", "181°", "line 17, value: \"181°\" is not accepted; an angle is more than 0 and less than 180 degrees.")]
    [InlineData("angle,A,B,101.5°,protractor", "angle,A,B,101.5°,rule", "line 17, instrument: \"rule\" is not accepted; it reads lengths,")]
    [InlineData("centre to face,P1,B,20.1 ± 0.2", "centre to face,P1,B,20.1,calliper,,8", "line 16, pin: \"8\" is not accepted; a centre to face is read without a pin; leave it empty.")]
    [InlineData("height,A,S1,31.5", "tallness,A,S1,31.5", "line 14, kind: \"tallness\" is not accepted; write one of distance, outside over holes,")]
    [InlineData("height gauge,P1", "height gauge,P9", "line 14, at: \"P9\" is not accepted; name a corner or a hole of the part.")]
    [InlineData("on,P2,B", "on,P2,A", "line 20, to: \"A\" is not accepted; P2 lies on it already")]
    [InlineData("on,P2,B", "on,E1,T1", "line 20, to: \"T1\" is not accepted; an edge can lie on a face only.")]
    public void A_bad_row_is_refused_in_a_sentence(string good, string bad, string sentence)
    {
        Assert.Contains(good, Good);
        Assert.StartsWith(sentence, Read(Good.Replace(good, bad)).Refusal?.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "a flat face joins from rows below it or from a file beside it; refusals name the line of this file, or the other file")]
    public void A_face_joins_flat()
    {
        const string flat = "feature,kind\nH1,hole\nH2,hole\nkind,from,to,value,instrument\ncentre distance,H1,H2,20.02,calliper\n";
        var inline = Read($"{Good}\non face,B,,right\n{flat}").Value;
        var face = Assert.Single(inline.Faces);
        Assert.Equal(("B", 2, 1, new Vec3(1, 0, 0)), (face.Plane, face.Sample.Features.Length, face.Sample.Readings.Length, face.Along));
        var named = SolidFile.Read($"{Good}\non face,B,b.csv,right\n", name => name == "b.csv" ? System.Text.Encoding.UTF8.GetBytes(flat) : []).Value;
        Assert.Equal(face.Sample.Readings[0].Value, named.Faces[0].Sample.Readings[0].Value);
        Assert.StartsWith("line 26, value: \"far\"", Read($"{Good}\non face,B,,right\n{flat.Replace("20.02", "far")}").Refusal?.Sentence);
        Assert.StartsWith("b.csv, line 5, value", SolidFile.Read($"{Good}\non face,B,b.csv\n", _ => System.Text.Encoding.UTF8.GetBytes(flat.Replace("20.02", "far"))).Refusal?.Sentence);
        Assert.StartsWith("on face: \"b.csv\" is not accepted; no other file is at hand here", Read($"{Good}\non face,B,b.csv\n").Refusal?.Sentence);
        Assert.StartsWith("line 21, on face: \"P1\" is not accepted; name a face", Read($"{Good}\non face,P1\n{flat}").Refusal?.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "JSON and the sheet make the same sample")]
    public void Json_says_the_same()
    {
        const string json = """
            { "id": "angle", "units": "mm",
              "features": [ { "id": "A", "kind": "face", "sketch_x_mm": 20, "sketch_y_mm": 10, "sketch_z_mm": 0, "way_x": 0, "way_y": 0, "way_z": 1 },
                            { "id": "S1", "kind": "set-up", "way_x": 0, "way_y": 0, "way_z": 1 }, { "id": "P1", "kind": "corner", "on": "A" } ],
              "readings": [ { "kind": "height", "from": "P1", "to": "S1", "value_mm": 31.5, "sigma_mm": 0.02 } ],
              "faces": [ { "plane": "A", "way_x": 1, "way_y": 0, "way_z": 0, "survey": { "points": [ { "id": "P1", "type": "corner" } ], "readings": [] } } ] }
            """;
        var sample = Read(json).Value;
        Assert.Equal((3, 1, 1), (sample.Features.Length, sample.Readings.Length, sample.Faces.Length));
        Assert.Equal((SolidReadingKind.Height, 31.5, 0.02), (sample.Readings[0].Kind, sample.Readings[0].Value, sample.Readings[0].Sigma));
        Assert.StartsWith("line 4, readings[0].value_rad: \"1\" is not accepted; a height is read in mm; give value_mm.", Read(json.Replace("\"value_mm\": 31.5", "\"value_rad\": 1")).Refusal?.Sentence);
        Assert.StartsWith("line 3, features[1].way_x", Read(json.Replace("\"set-up\", \"way_x\": 0, \"way_y\": 0, \"way_z\": 1", "\"set-up\", \"way_x\": 0, \"way_y\": 0, \"way_z\": 0")).Refusal?.Sentence);
        Assert.Contains("JSON breaks off", Read(json[..^20]).Refusal?.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "rows added one by one read as if typed; the rest of the text stays as it was")]
    public void Rows_are_added_and_taken_out()
    {
        var text = BlankSolid.Write("bare", "A bare sheet");
        text = SolidText.WithFeature(text, ("feature", "A"), ("kind", "face"), ("way", "up"));
        text = SolidText.WithFeature(text, ("feature", "P1"), ("kind", "corner"), ("on", "A"), ("x", "0"), ("y", "0"), ("z", "0"));
        text = SolidText.WithFeature(text, ("feature", "P2"), ("kind", "corner"), ("on", "A"));
        text = SolidText.WithReading(text, ("kind", "distance"), ("from", "P1"), ("to", "P2"), ("value", "40,5"), ("instrument", "calliper"));
        var sample = Read(text).Value;
        Assert.Equal((3, 1, 40.5), (sample.Features.Length, sample.Readings.Length, sample.Readings[0].Value));
        var line = TypedSolid.Read(text).Value.Readings[0].Line;
        Assert.Empty(Read(SolidText.Without(text, line)).Value.Readings);

        // A heading without the needed column gets a new one behind it; flat rows below are left alone.
        const string narrow = "feature;kind\nA;face\nH1;hole\nkind;from;value;instrument\ndiameter;H1;8;calliper\non face;A\nfeature;kind\nH1;hole\n";
        var wide = Read(SolidText.WithReading(narrow, ("kind", "height"), ("from", "H1"), ("to", "S1"), ("value", "30"), ("instrument", "± 0.1"))).Refusal?.Sentence;
        Assert.Contains("to: \"S1\"", wide);
        var grown = SolidText.WithFeature(narrow, ("feature", "S1"), ("kind", "set-up"), ("way", "up"));
        grown = SolidText.WithReading(grown, ("kind", "height"), ("from", "H1"), ("to", "S1"), ("value", "30"), ("instrument", "± 0.1"));
        Assert.Equal((3, 2, 1), (Read(grown).Value.Features.Length, Read(grown).Value.Readings.Length, Read(grown).Value.Faces.Length));
    }

    [Fact]
    [Truth(Grade.Property, "a stored flat survey joins a face and reads back as it was; joined again it replaces itself")]
    public void A_stored_flat_survey_is_joined()
    {
        var sketch = new SampleSketch(Guid.NewGuid(), [new("H1", "hole", "", "", 3.5, -2, null, null, null), new("H2", "hole", "", "", null, null, null, null, null)]);
        ReadingEntry[] standing = [Entry("centre distance", "H1", "H2", "20,02", "", "calliper"), Entry("diameter", "H1", "", ".257\"", "0.05", "")];
        var once = FaceText.With(Good, "B", "right", sketch, standing);
        var flat = Assert.Single(Read(once).Value.Faces).Sample;
        Assert.Equal((2, 2, 20.02), (flat.Features.Length, flat.Readings.Length, flat.Readings[0].Value));
        Assert.Equal((0.025, 0.257 * 25.4), (flat.Readings[1].Sigma, Math.Round(flat.Readings[1].Value, 9)));
        Assert.Equal(once, FaceText.With(once, "B", "right", sketch, standing));

        static ReadingEntry Entry(string kind, string from, string to, string value, string plusMinus, string instrument) =>
            new(Guid.NewGuid(), Guid.NewGuid(), kind, from, to, value, plusMinus, instrument, "", DateTimeOffset.UnixEpoch, "test");
    }

    [Fact]
    [Truth(Grade.Property, "a sheet that is only begun is loose and says what to read; it is no fault")]
    public void A_sheet_just_begun_is_loose()
    {
        foreach (var rows in new[] { "A,face,up\n", "P1,corner,\n", "A,face,up\nS1,set-up,up\nP1,corner,\n" })
        {
            var result = WitnessMark.FrontOffice.MeasureSolid.MeasureSolid.Run(new(Read($"feature,kind,way\n{rows}").Value));
            Assert.True(result.Plan.Convergence.Converged, result.Plan.Convergence.Words);
            Assert.Equal(0, result.Plan.Redundancy);
            Assert.NotNull(result.Part);
            Assert.Contains(result.Cautions, c => c.StartsWith("Nothing checks these readings", StringComparison.Ordinal));
            Assert.NotEqual("", result.ToJson());
        }
    }
}
