using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Photo;

/// <summary>Pictures and figures that nothing can be made of get one plain sentence.</summary>
[Truth(Grade.CommonPractice, "house rule: a refusal names field, value and what would be right")]
public class PhotoRefusalTests
{
    static Raster Even(int width, int height, byte value = 200) => new(width, height, 1, [.. Enumerable.Repeat(value, width * height)]);

    static string Sentence(Raster raster, PhotoAsked? asked = null) => MakeTrue.Of(raster, asked ?? new()).Refusal!.Sentence;

    [Fact]
    public void A_blank_picture_has_no_target() => Assert.Contains("no black squares", Sentence(Even(1000, 800)), StringComparison.Ordinal);

    [Fact]
    public void Noise_has_no_target()
    {
        var chance = new Chance(1);
        Assert.Contains("pick its corners by hand", Sentence(new(1000, 800, 1, [.. Enumerable.Range(0, 800_000).Select(_ => (byte)chance.Below(256))])), StringComparison.Ordinal);
    }

    [Fact]
    public void Squares_that_are_not_the_sheets_are_not_taken_for_it()
    {
        // A board of 12 x 9 black squares with paper between, none with an eye.
        var pixels = Enumerable.Repeat((byte)220, 1000 * 800).ToArray();
        for (var y = 0; y < 800; y++)
            for (var x = 0; x < 1000; x++)
                if (x % 80 is > 20 and < 60 && y % 80 is > 20 and < 60 && x < 960 && y < 720) pixels[y * 1000 + x] = 20;
        Assert.Contains("of them stand as on any of the target sheets", Sentence(new(1000, 800, 1, pixels)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_seen_from_behind_glass_is_another_sheet()
    {
        var camera = TrueTests.Over(10, 0, 0);
        var right = Rendered.Picture(new Scene(Target.A4), camera, 1);
        var mirrored = right with { Pixels = [.. Enumerable.Range(0, 2000 * 1500).Select(k => right.Pixels[k / 2000 * 2000 + 1999 - k % 2000])] };
        Assert.Contains("picture:", Sentence(mirrored), StringComparison.Ordinal);
    }

    [Fact]
    public void The_wrong_sheet_named_is_refused() =>
        Assert.Contains("the A3 target sheet", Sentence(Rendered.Picture(new Scene(Target.A4), TrueTests.Over(10, 0, 0), 1), new(Target.A3)), StringComparison.Ordinal);

    [Fact]
    public void Pictures_of_a_wrong_size_or_make_are_refused()
    {
        Assert.Contains("100 x 100", Sentence(Even(100, 100)), StringComparison.Ordinal);
        Assert.Contains("0 x 5", Sentence(new(0, 5, 1, [])), StringComparison.Ordinal);
        Assert.Contains("40 million", Sentence(new(100_000, 100_000, 1, [])), StringComparison.Ordinal);
        Assert.Contains("12 bytes", Sentence(new(500, 500, 3, new byte[12])), StringComparison.Ordinal);
        Assert.Contains("2 channels", Sentence(new(500, 500, 2, new byte[500_000])), StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_out_of_range_are_refused()
    {
        var even = Even(400, 300);
        Assert.Contains("focal length: \"2\"", Sentence(even, new() { Focal35 = 2 }), StringComparison.Ordinal);
        Assert.Contains("height of the face: \"-1\"", Sentence(even, new() { Height = new(-1, 0.1) }), StringComparison.Ordinal);
        Assert.Contains("check line up: \"12\"", PrintScale.Of(100, 12).Refusal!.Sentence, StringComparison.Ordinal);
        Assert.Contains("check line across", PrintScale.Of(double.NaN, 100).Refusal!.Sentence, StringComparison.Ordinal);
        Assert.Contains("check line ±", PrintScale.Of(100, 100, 0).Refusal!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Corners_that_hold_no_camera_are_refused()
    {
        var even = Even(400, 300);
        Tie At(double u, double v, double x, double y) => new(new(u, v), new(x, y));
        Assert.Contains("at least four", Sentence(even, new() { Corners = [At(0, 0, 0, 0), At(9, 0, 9, 0), At(0, 9, 0, 9)] }), StringComparison.Ordinal);
        Assert.Contains("within the picture", Sentence(even, new() { Corners = [At(0, 0, 0, 0), At(900, 0, 9, 0), At(0, 9, 0, 9), At(9, 9, 9, 9)] }), StringComparison.Ordinal);
        Assert.Contains("no three of four on one line", Sentence(even, new() { Corners = [At(0, 0, 0, 0), At(10, 10, 1, 1), At(20, 20, 2, 2), At(30, 30, 3, 3)] }), StringComparison.Ordinal);
    }

    [Fact]
    public void A_search_that_is_stopped_stops()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => MakeTrue.Of(Even(500, 500), new(), null, stop.Token));
    }
}
