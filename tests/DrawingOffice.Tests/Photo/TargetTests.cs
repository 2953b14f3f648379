using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Photo;

/// <summary>The sheet: its key, its places, and what is printed.</summary>
public class TargetTests
{
    public static TheoryData<string> Sheets => [.. Target.All.Select(t => t.Name)];

    [Fact]
    [Truth(Grade.Property, "counted over all sheets, places and turns")]
    public void Eight_squares_in_a_row_stand_so_at_one_place_of_one_sheet_only()
    {
        var seen = new Dictionary<string, string>();
        foreach (var target in Target.All)
            for (var start = 0; start < target.Count; start++)
                for (var turn = 0; turn < 4; turn++)
                {
                    var cells = Enumerable.Range(start, 8).Select(k => k % target.Count).Select(k => (Cell: Turned(target.Cell(k), turn), Eye: target.Key[k])).ToArray();
                    var (left, low) = (cells.Min(c => c.Cell.X), cells.Min(c => c.Cell.Y));
                    var picture = string.Join(' ', cells.Select(c => $"{c.Cell.X - left},{c.Cell.Y - low},{c.Eye}").Order(StringComparer.Ordinal));
                    Assert.True(seen.TryAdd(picture, $"{target.Name} {start} {turn}"), $"{target.Name} {start} turned {turn} looks as {seen[picture]}");
                }
        Assert.Equal(4 * (44 + 42 + 64), seen.Count);
    }

    static (int X, int Y) Turned((int Column, int Row) c, int turn)
    {
        var (x, y) = c;
        for (var k = 0; k < turn; k++) (x, y) = (-y, x);
        return (x, y);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    [Truth(Grade.Property, "place and number are each other's inverse")]
    public void A_square_is_found_again_at_its_place(string name)
    {
        var target = Target.Of(name).Value;
        Assert.Equal(target.Count, target.Key.Length);
        for (var k = 0; k < target.Count; k++)
        {
            var (column, row) = target.Cell(k);
            Assert.Equal(k, target.IndexOf(column, row));
            if (k > 0) Assert.Equal(20, target.Middle(k).DistanceTo(target.Middle(k - 1)), 12);
        }
        Assert.Equal(-1, target.IndexOf(1, 1));
        Assert.Equal(-1, target.IndexOf(target.Columns, 0));
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    [Truth(Grade.Property, "ink by the area of what is drawn; 100 mm; printers keep 5 mm clear (common practice)")]
    public void The_sheet_prints_every_square_with_its_eye_and_two_check_lines(string name)
    {
        var target = Target.Of(name).Value;
        var sheet = TargetSheet.Of(target);
        var squares = sheet.Marks.OfType<PathMark>().ToArray();
        Assert.Equal(target.Count, squares.Length);
        for (var k = 0; k < target.Count; k++)
        {
            double twice = 0;
            var points = squares[k].Points;
            for (var i = 0; i < points.Length; i++) twice += points[i].Cross(points[(i + 1) % points.Length]);
            // A polygon of 48 chords falls short of its circle by 0.3 %.
            Assert.InRange(twice / 2 - (target.HasEye(k) ? 100 - 4 * Math.PI : 100), -1e-9, 0.04);
            Assert.All(points, p => Assert.True(p.X > 5 && p.Y > 4.5 && p.X < sheet.Width - 5 && p.Y < sheet.Height - 4.5));
        }
        var lines = sheet.Marks.OfType<LineMark>().Where(l => l.A.DistanceTo(l.B) > 50).ToArray();
        Assert.Equal(2, lines.Length);
        Assert.All(lines, l => Assert.Equal(100, l.A.DistanceTo(l.B), 10));
        Assert.Equal(0, (lines[0].B - lines[0].A).Dot(lines[1].B - lines[1].A), 9);
        Assert.Equal("%PDF", System.Text.Encoding.ASCII.GetString(Pdf.Write([sheet]), 0, 4));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "house rule: a refusal names field, value and what would be right")]
    public void A_paper_that_there_is_no_sheet_for_is_refused() =>
        Assert.Equal("target: \"a5\" is not accepted; the paper of the target sheet: a4, a3 or letter.", Target.Of("a5").Refusal!.Sentence);
}
