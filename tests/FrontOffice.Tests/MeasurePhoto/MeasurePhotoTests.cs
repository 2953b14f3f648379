using System.Text;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasurePhoto;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.Tests.FrontOffice.MeasurePhoto;

/// <summary>The whole road on rendered photographs: file, target, holes and outline, readings, plan.</summary>
public class MeasurePhotoTests
{
    static readonly Shot View = new(1050, 1400, 330, 0.25, 27, -0.02, Target.A4) { Rays = 3, Noise = 1 };

    /// <summary>Standard deviations within which every figure of a seeded picture must lie.</summary>
    const double Within = 3.5;

    static Vec2 Px(Shot view, Vec2 plate)
    {
        var at = HornPlate.OnSheet(plate);
        return view.Px(new(at.X, at.Y, HornPlate.Thickness));
    }

    static PhotoWork Work(Shot view)
    {
        double w = HornPlate.Width / 2, h = HornPlate.Height / 2, r = HornPlate.Corner, c = HornPlate.CutOff;
        Vec2[] around = [new(-w + r, -h), new(0, -h), new(w - r, -h), new(w, -h + r), new(w, 0), new(w, h - c), new(w - c, h), new(0, h), new(-w + r, h), new(-w, h - r), new(-w, 0), new(-w, -h + r)];
        return new()
        {
            CheckX = 100,
            CheckY = 100,
            Thickness = HornPlate.Thickness,
            Focal35 = view.Focal35,
            Picks =
            [
                .. HornPlate.Holes.Select(hole => new PhotoPick(hole.Name, PickKind.Hole, [Px(view, hole.At + new Vec2(1, -0.7))])),
                new("E", PickKind.Outline, [.. around.Select(p => Px(view, p))], Closed: true),
            ],
        };
    }

    static PhotoResult Measured(ulong seed) => WitnessMark.FrontOffice.MeasurePhoto.MeasurePhoto.Run(new("photo-1", View.Take(seed), Work(View)));

    [Fact]
    [Truth(Grade.Property, "rendered by rays from a plate of known size: every distance and diameter within 3.5 of its own ±")]
    public void Holes_are_found_where_they_are()
    {
        var made = Measured(seed: 4);
        Assert.Equal([], made.Seen.Where(s => s.Why is not null).Select(s => s.Why));
        var holes = made.Seen.Where(s => s.Hole is not null).Select(s => s.Hole!).ToArray();
        var scale = made.Photo.Scale.Std;
        for (var i = 0; i < holes.Length; i++)
        {
            var (d, truth) = (holes[i].Diameter, HornPlate.Holes[i].Diameter);
            Assert.InRange(Math.Abs(d.Value - truth) / Math.Sqrt(d.Std * d.Std + scale * scale * truth * truth), 0, Within);
            Assert.InRange(d.Std, 0.001, 0.2);
            for (var k = 0; k < i; k++)
            {
                var (seen, real) = (holes[i].Centre.At.DistanceTo(holes[k].Centre.At), HornPlate.Holes[i].At.DistanceTo(HornPlate.Holes[k].At));
                var std = Math.Sqrt(holes[i].Centre.Spread.XX + holes[i].Centre.Spread.YY + holes[k].Centre.Spread.XX + holes[k].Centre.Spread.YY + scale * scale * real * real);
                Assert.InRange(Math.Abs(seen - real) / std, 0, Within);
            }
        }
    }

    [Fact]
    [Truth(Grade.Property, "the sheet of readings is one that the survey takes, and its plan has the plate's own distances within ±")]
    public void The_readings_make_a_plan()
    {
        var sheet = PhotoRows.Of(Measured(seed: 5)).Sheet("Horn plate");
        var sample = SampleFile.Read(Encoding.UTF8.GetBytes(sheet)).Value;
        Assert.Contains(sample.Features, f => f is { Id: "H4", Kind: FeatureKind.Hole });
        Assert.Contains(sample.Features, f => f.Kind == FeatureKind.Edge);
        Assert.Contains(sample.Features, f => f.Kind == FeatureKind.Arc);
        Assert.Equal("photo-1", Assert.Single(sample.Frames).Name);
        var plan = WitnessMark.FrontOffice.MeasureSample.MeasureSample.Run(new(sample) { SearchMirrors = false, Advise = false }).Plan;
        Assert.True(plan.Convergence.Converged);
        var (h1, h3) = (HornPlate.Holes[0].At, HornPlate.Holes[2].At);
        var found = plan.Distance("H1", "H3")!.Value;
        Assert.InRange(found.Value - h1.DistanceTo(h3), -0.4, 0.4);
    }

    [Fact]
    [Truth(Grade.Property, "an entry of kind frame is no reading: it gives the scale's ± of 0.28 %, one standard ± of 0.0014; a slip in it is told")]
    public void A_kept_entry_says_how_true_a_frame_s_scale_is()
    {
        var sample = new PartSample(Guid.NewGuid(), Guid.NewGuid(), "Horn plate", SampleOrigin.TakenOff, null, []);
        var sketch = new SampleSketch(sample.Id, [new("H1", "hole", "", "", 0, 0, null, null, null)]);
        ReadingEntry Entry(string kind, string from, string to, string value, string within) => new(Guid.NewGuid(), sample.Id, kind, from, to, value, within, "", "", default, "");
        var scale = Entry("frame", "photo-1", "", "± 0.28 %", "");
        var stored = StoredSample.Of(sample, sketch, [Entry("picked", "H1", "photo-1", "x 1.5 y 2.5", "± 0.1"), scale], []);
        Assert.Empty(stored.Refused);
        var frame = Assert.Single(stored.Sample!.Frames);
        Assert.Equal("photo-1", frame.Name);
        Assert.Equal(0.0014, frame.ScaleStd, 12);
        Assert.Single(stored.Entries);
        Assert.Contains("± 0.5 %", StoredSample.Check(sample, sketch, scale with { Value = "wide" }, []));
    }

    [Fact]
    [Truth(Grade.Property, "the true picture shows the plate at its scale: metal in the middle of a web, paper in the middle of the large hole")]
    public void The_true_picture_is_true()
    {
        var made = Measured(seed: 6);
        var picture = WitnessMark.FrontOffice.MeasurePhoto.MeasurePhoto.Picture(made, perMm: 4).Value;
        byte At(Vec2 face)
        {
            var px = picture.ToPicture(face);
            return picture.Raster.Pixels[((int)px.Y * picture.Raster.Width + (int)px.X) * picture.Raster.Channels];
        }
        // Light 0.30 of metal, 0.85 of paper and 0.04 of ink, through the curve of sRGB.
        Assert.InRange(At(HornPlate.OnSheet(new(-45, 0))), 120, 175);
        Assert.InRange(At(HornPlate.OnSheet(new(5, 0))), 195, 255);
        Assert.InRange(At(Target.A4.Middle(1)), 30, 80);
        Assert.Equal(4, picture.PixelsPerMm, 6);
        var svg = PhotoDrawing.Svg(made, picture, "true.png");
        Assert.Contains("<image href=\"true.png\"", svg);
        Assert.Contains("H4", svg);
    }

    [Fact]
    [Truth(Grade.Property, "a page's questions are answered as the whole run answers them; nothing can be picked before")]
    public void A_click_is_answered_as_the_whole_is()
    {
        var open = new OpenPhoto(View.Take(7));
        Assert.Throws<RefusedException>(() => open.Pick(new("H1", PickKind.Hole, [Vec2.Zero], false)));
        var work = Work(View);
        var told = new List<double>();
        var shown = open.MakeTrue(new("photo-1", PhotoWorkJson.Write(work)), new Shares(told));
        Assert.StartsWith("data:image/png;base64,", shown.Picture);
        Assert.All(told.Zip(told.Skip(1)), p => Assert.True(p.First <= p.Second));
        Assert.InRange(told[^1], 0.9, 1);
        var at = HornPlate.OnSheet(HornPlate.Holes[3].At);
        var answer = open.Pick(new("big", PickKind.Hole, [at + new Vec2(3, 2)], false));
        Assert.Null(answer.Shown.Why);
        Assert.StartsWith("⌀ 3", answer.Shown.Size);
        Assert.Equal(2, answer.Shown.Rows.Readings.Length);
        var again = open.Pick(new("big", PickKind.Hole, answer.Pick.Clicks, false, AsTaken: true));
        Assert.Equal((answer.Shown.Size, answer.Shown.Place), (again.Shown.Size, again.Shown.Place));
        Assert.StartsWith("M", open.Trail([at, at + new Vec2(20, 0)]));
    }

    sealed class Shares(List<double> told) : IProgress<double>
    {
        public void Report(double value) => told.Add(value);
    }

    [Fact]
    [Truth(Grade.Property, "a picture without target, half a pair of check lines and an unknown paper are each one sentence")]
    public void What_cannot_be_measured_is_refused()
    {
        string Why(PhotoWork work) => Assert.Throws<RefusedException>(() => WitnessMark.FrontOffice.MeasurePhoto.MeasurePhoto.Run(new("p", new(300, 300, 1, new byte[90_000]), work))).Message;
        Assert.Contains("picture", Why(new()));
        Assert.Contains("both check lines", Why(new() { CheckX = 99 }));
        Assert.Contains("a4, a3 or letter", Why(new() { Target = "a5" }));
        Assert.Contains("80 to 120", Why(new() { CheckX = 9.9, CheckY = 100 }));
    }
}
