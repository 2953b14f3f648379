using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.PractiseMeasuring;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.Tests.FrontOffice.PractiseMeasuring;

using PractiseMeasuring = WitnessMark.FrontOffice.PractiseMeasuring.PractiseMeasuring;

public class SheetTests
{
    [Fact]
    [Truth(Grade.Published, "ISO 216 A4 and 8½ by 11 in; 4 in = 101.6 mm by the inch of 25.4 mm (ISO 31-1)")]
    public void Every_sheet_stands_on_both_papers_with_check_lines_of_100_mm_and_4_in_both_ways()
    {
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            for (var n = 1; n <= 60; n++)
            {
                var sheet = PracticeSheet.Draw(n, paper);
                Assert.Equal((paper.Width, paper.Height), (sheet.Width, sheet.Height));
                var paths = sheet.Marks.OfType<PathMark>().Where(m => m.Layer == Layers.Check && m.Points.Length == 2).Select(m => m.Points[1] - m.Points[0]).ToList();
                foreach (var length in new[] { 100, 101.6 })
                {
                    Assert.Contains(paths, p => Math.Abs(p.X - length) < 1e-9 && p.Y == 0);
                    Assert.Contains(paths, p => Math.Abs(p.Y - length) < 1e-9 && p.X == 0);
                }
                foreach (var p in sheet.Marks.OfType<PathMark>().SelectMany(m => m.Points))
                    Assert.True(p.X is >= 4 && p.X <= paper.Width - 4 && p.Y is >= 4 && p.Y <= paper.Height - 4, $"sheet {n} runs off {paper.Name}");
                foreach (var text in sheet.Marks.OfType<TextMark>())
                    if (Lettering.Bounds(text) is { } box) Assert.True(box.Left > 4 && box.Right < paper.Width - 4, $"\"{text.Text}\" runs off sheet {n}");
            }
        }
    }

    [Fact]
    public void Two_sheets_differ_and_one_sheet_is_the_same_on_both_papers_and_every_time()
    {
        var plates = Enumerable.Range(1, 500).Select(PracticePlate.Of).ToList();
        Assert.Equal(500, plates.Select(p => p.Corners[2].At).Distinct().Count());
        Assert.Equal(PracticePlate.Of(17).Holes, PracticePlate.Of(17).Holes);
        Assert.Throws<RefusedException>(() => PracticePlate.Of(0));
        Assert.Throws<RefusedException>(() => PracticePlate.Of(10_000));
    }

    [Fact]
    [Truth(Grade.Property, "holes lie within the plate and apart, and nothing is past the reach of a 150 mm calliper, on all sheets")]
    public void Every_plate_could_be_cut_and_measured()
    {
        for (var n = 1; n <= PracticeSheet.LastNumber; n++)
        {
            var plate = PracticePlate.Of(n);
            foreach (var h in plate.Holes)
            {
                foreach (var (id, _, _) in plate.Edges) Assert.True(plate.True(ReadingKind.EdgeToHole, h.Id, id, default) > 2, $"sheet {n}, {h.Id} at {id}");
                foreach (var o in plate.Holes.Where(o => o.Id != h.Id)) Assert.True(plate.True(ReadingKind.InsideBetweenHoles, h.Id, o.Id, default) > 2, $"sheet {n}, {h.Id} {o.Id}");
            }
            foreach (var a in plate.Corners)
                foreach (var b in plate.Corners) Assert.True(a.At.DistanceTo(b.At) < 149, $"sheet {n}");
        }
    }

    [Fact]
    public void The_wanted_list_begins_with_the_check_lines_and_gives_nothing_away()
    {
        var wanted = PractiseMeasuring.Wanted(17);
        Assert.Equal([true, true, true, true, false], wanted.Take(5).Select(s => s.IsCheck));
        Assert.Equal(27, wanted.Length);
        // The same rough figures on every sheet.
        Assert.Equal(wanted, PractiseMeasuring.Wanted(18));
    }

    [Fact]
    [Truth(Grade.Property, "redundancy numbers of the adjustment: 0 nothing checks a reading, 1 all others do")]
    public void Every_wanted_reading_is_checked_by_the_others_on_every_sheet()
    {
        for (var n = 1; n <= 100; n++)
        {
            var state = PractiseMeasuring.Measure(new Measurer(n).Measured());
            Assert.True(state.Held, $"sheet {n}");
            Assert.All(state.Plan!.Readings, r => Assert.True(r.RedundancyNumber > 0.05, $"sheet {n}, reading {r.Index}: {r.RedundancyNumber:0.00}"));
        }
    }

    [Fact]
    public void No_figure_of_the_plate_stands_on_its_sheet()
    {
        var plate = PracticePlate.Of(23);
        var svg = System.Text.Encoding.UTF8.GetString(PracticeSheet.Svg(23, PaperSize.A4).Bytes);
        var texts = PracticeSheet.Draw(23, PaperSize.A4).Marks.OfType<TextMark>().Select(m => m.Text).ToList();
        Assert.All(plate.Holes, h => Assert.DoesNotContain(texts, t => t.Contains($"{h.Diameter:0.0}", StringComparison.Ordinal)));
        Assert.Contains("sheet 23", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_is_written_with_what_is_still_to_be_read_and_read_back()
    {
        var request = new Measurer(8).Measured();
        var half = request with { Readings = request.Readings[..6] };
        var again = PracticeFile.Read(PracticeFile.Write(half)).Value;
        Assert.Equal(half.Number, again.Number);
        Assert.Equal(half.Readings, again.Readings);
        Assert.Contains("sheet,17", PracticeFile.Read("kind,from,to,value\ndiameter,H1,,12").Refusal!.Sentence, StringComparison.Ordinal);
        Assert.StartsWith("line 1, sheet: \"x\"", PracticeFile.Read("sheet,x").Refusal!.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check line", "across", "100 mm", "10.02", "no printer is that far off")]
    [InlineData("check line", "along", "100 mm", "100", "a check line runs across or up")]
    [InlineData("angle", "E1", "E2", "90°", "on a practice sheet read")]
    [InlineData("diameter", "H9", "", "12", "name a hole")]
    public void A_reading_that_cannot_be_is_refused_in_one_sentence(string kind, string from, string to, string value, string why) =>
        Assert.Contains(why, PractiseMeasuring.Check(17, new(kind, from, to, value, kind == "angle" ? "protractor" : "calliper")), StringComparison.Ordinal);
}
