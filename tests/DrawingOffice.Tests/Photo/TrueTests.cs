using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Photo;

/// <summary>The target found and the camera fitted, from pictures whose camera is known.</summary>
[Truth(Grade.SecondImplementation, "a renderer of the tests' own: pinhole, radial lens, samples, blur, noise")]
public class TrueTests
{
    internal static PhotoAsked Measured { get; } = new() { Print = PrintScale.Of(100, 100, 0.001).Value };

    static readonly Vec2[] s_inside = [.. from x in new[] { -70, -30, 10, 60 } from y in new[] { -100, -50, 0, 40, 110 } select new Vec2(x, y)];

    [Theory]
    [InlineData(0, 0, 3, 1)]
    [InlineData(15, 40, 90, 0.3)]
    [InlineData(30, 200, 20, 0.5)]
    [InlineData(45, 100, 185, 0.3)]
    [InlineData(55, 270, 0, 0.6)]
    [InlineData(55, 10, 130, 1)]
    public void The_target_is_found_however_it_lies_and_however_the_light_falls(double slant, double bearing, double roll, double shade)
    {
        var camera = Over(slant, bearing, roll);
        var photo = MakeTrue.Of(Rendered.Picture(new Scene(Target.A4) { Shade = shade }, camera, 1), Measured).Value;
        Assert.Equal(Target.A4, photo.Target);
        Assert.InRange(photo.Marks.Count(m => m.Used), 28, 44);
        Assert.InRange(photo.Residual, 0, 0.03);
        // Every square under its own number and the right way round.
        foreach (var mark in photo.Marks)
            for (var c = 0; c < 4; c++) Assert.InRange(mark.Corners[c].DistanceTo(camera.Project(Target.A4.Corners(mark.Index)[c])), 0, 0.6);
        foreach (var p in s_inside) Assert.InRange(photo.At(camera.Project(p), 0.01).At.DistanceTo(p), 0, 0.04);
        foreach (var p in s_inside) Assert.InRange(photo.ToPhoto(p).DistanceTo(camera.Project(p)), 0, 0.2);
    }

    [Theory]
    [InlineData("A3", 20, 600)]
    [InlineData("Letter", 40, 450)]
    public void The_marks_say_which_sheet_it_is(string name, double slant, double distance)
    {
        var camera = new Pinhole(2000, 1500, 1560, slant, 70, 95, distance);
        var photo = MakeTrue.Of(Rendered.Picture(new Scene(Target.Of(name).Value), camera, 2), Measured).Value;
        Assert.Equal(name, photo.Target!.Name);
        Assert.InRange(photo.At(camera.Project(new Vec2(30, -40)), 0.01).At.DistanceTo(new(30, -40)), 0, 0.02);
    }

    [Fact]
    public void Half_of_the_sheet_is_enough_and_the_rest_is_said_to_lie_outside()
    {
        var camera = Over(12, 30, 8);
        var photo = MakeTrue.Of(Rendered.Picture(new Scene(Target.A4) { Covered = p => p.X > 10 }, camera, 3), Measured).Value;
        Assert.InRange(photo.Marks.Length, 20, 23);
        var (near, far) = (photo.At(camera.Project(new Vec2(-50, 20)), 0.01), photo.At(camera.Project(new Vec2(80, 20)), 0.01));
        Assert.False(near.Outside);
        Assert.True(far.Outside);
        Assert.True(far.Spread.Std > near.Spread.Std);
        Assert.InRange(near.At.DistanceTo(new(-50, 20)), 0, 0.02);
        Assert.InRange(far.At.DistanceTo(new(80, 20)), 0, 0.06);
    }

    [Fact]
    public void A_frame_that_lies_in_pieces_is_put_together()
    {
        var camera = Over(12, 30, 8);
        var scene = new Scene(Target.A4) { Covered = p => Math.Sin(p.X * 0.09) * Math.Sin(p.Y * 0.11 + 1) > 0.55 };
        var photo = MakeTrue.Of(Rendered.Picture(scene, camera, 3), Measured).Value;
        Assert.InRange(photo.Marks.Length, 24, 36);
        foreach (var p in s_inside) Assert.InRange(photo.At(camera.Project(p), 0.01).At.DistanceTo(p), 0, 0.02);
    }

    [Fact]
    public void The_lens_is_fitted_where_it_bends_lines_and_left_out_where_it_does_not()
    {
        var bent = new Pinhole(2000, 1500, 1300, 25, 70, 95, 360, default, -0.12, 0.04);
        var photo = MakeTrue.Of(Rendered.Picture(new Scene(Target.A4), bent, 4), Measured).Value;
        Assert.NotEqual(LensModel.None, photo.Camera.Lens);
        // r is in half diagonals there and in focal lengths here: 1250 and 1300 px.
        var (k1, k2) = (-0.12 * Math.Pow(1250.0 / 1300, 2), 0.04 * Math.Pow(1250.0 / 1300, 4));
        foreach (var r in new[] { 0.2, 0.5, 0.7 })
            Assert.Equal(k1 * r * r + k2 * r * r * r * r, photo.Camera.Theta[8] * r * r + photo.Camera.Theta[9] * r * r * r * r, 3e-4);
        foreach (var p in s_inside) Assert.InRange(photo.At(bent.Project(p), 0.01).At.DistanceTo(p), 0, 0.02);

        var straight = MakeTrue.Of(Rendered.Picture(new Scene(Target.A4), Over(25, 70, 95), 4), Measured).Value;
        Assert.Equal(LensModel.None, straight.Camera.Lens);
        Assert.Contains("no bending", straight.LensWords, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(15, 40)]
    [InlineData(45, 300)]
    public void A_slanting_view_tells_where_the_camera_stood(double slant, double bearing)
    {
        var camera = Over(slant, bearing, 20);
        var stand = MakeTrue.Of(Rendered.Picture(new Scene(Target.A4), camera, 5), Measured).Value.Stand!;
        Assert.Equal(FocalFrom.Marks, stand.From);
        Assert.InRange(Math.Abs(stand.Focal.Value - camera.Focal), 0, 5 * stand.Focal.Std + 1);
        Assert.InRange(Math.Abs(stand.Above.Value - camera.Eye.Z), 0, 5 * stand.Above.Std + 0.3);
        Assert.InRange(stand.Foot.DistanceTo(new(camera.Eye.X, camera.Eye.Y)), 0, 0.5);
        Assert.Equal(slant, stand.Tilt * 180 / Math.PI, 0.1);
    }

    [Fact]
    public void A_view_from_straight_above_takes_the_stated_focal_length_or_says_that_it_guesses()
    {
        var camera = Over(0, 0, 3);
        var picture = Rendered.Picture(new Scene(Target.A4), camera, 6);
        // 24 x 36 mm film has a diagonal of 43.27 mm, the picture one of 2500 px.
        var stated = MakeTrue.Of(picture, Measured with { Focal35 = camera.Focal * 43.2666 / 2500 }).Value;
        Assert.Equal(FocalFrom.Stated, stated.Stand!.From);
        Assert.Equal(camera.Eye.Z, stated.Stand.Above.Value, 1.0);
        Assert.Equal(0.05 * camera.Eye.Z, stated.Stand.Above.Std, 2.0);
        var guessed = MakeTrue.Of(picture, Measured).Value;
        Assert.Equal(FocalFrom.Guessed, guessed.Stand!.From);
        Assert.Contains(guessed.Cautions, c => c.Contains("usual phone", StringComparison.Ordinal) && c.Contains("mm too long", StringComparison.Ordinal));
    }

    [Fact]
    public void A_print_that_came_out_small_is_allowed_for()
    {
        // The sheet is 2 % smaller across and 1 % up than drawn: seen places stand for shorter lengths.
        var camera = Over(20, 80, 10);
        var picture = Rendered.Picture(new Scene(Target.A4), camera, 7);
        var photo = MakeTrue.Of(picture, new PhotoAsked { Print = PrintScale.Of(98, 99, 0.05).Value, Height = new(0, 0) }).Value;
        var spot = photo.At(camera.Project(new Vec2(60, -80)), 0.01);
        Assert.InRange(spot.At.DistanceTo(new(60 * 0.98, -80 * 0.99)), 0, 0.02);
        Assert.Equal(0.0005 / Math.Sqrt(2), photo.Scale.Std, 6);
        Assert.Contains(photo.Cautions, c => c.Contains("98.0 % across and 99.0 % up", StringComparison.Ordinal));
        Assert.Contains(MakeTrue.Of(picture, new PhotoAsked()).Value.Cautions, c => c.Contains("check lines are not measured", StringComparison.Ordinal));
    }

    [Fact]
    public void A_square_of_another_place_is_set_aside()
    {
        // One square is pasted over, a millimetre and a half off its place.
        var moved = Target.A4.Middle(5);
        var scene = new Scene(Target.A4) { Moved = (moved, new Vec2(1.5, 0)) };
        var photo = MakeTrue.Of(Rendered.Picture(scene, Over(10, 80, 10), 8), Measured).Value;
        Assert.False(photo.Marks.Single(m => m.Index == 5).Used);
        Assert.Equal(43, photo.Marks.Count(m => m.Used));
        Assert.InRange(photo.Residual, 0, 0.01);
        Assert.Contains(photo.Cautions, c => c.Contains("1 of 44 squares disagree", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.02, false)]
    [InlineData(0.16, true)]
    public void A_sheet_that_is_not_flat_is_told_where_another_picture_would_help(double wave, bool told)
    {
        // Waves that neither the homography nor two lens terms follow; a place's ± takes half of them either way.
        var scene = new Scene(Target.A4) { Crept = p => new Vec2(Math.Sin(p.Y / 15), Math.Sin(p.X / 15 + 1)) * wave };
        var photo = MakeTrue.Of(Rendered.Picture(scene, Over(10, 80, 10), 9), Measured).Value;
        Assert.InRange(photo.Residual, 0.4 * wave, wave);
        Assert.Equal(told, photo.Cautions.Any(c => c.Contains("miss their places", StringComparison.Ordinal)));
    }

    internal static Pinhole Over(double slant, double bearing, double roll, double k1 = 0) =>
        new(2000, 1500, 1560, slant, bearing, roll, slant > 40 ? 500 : 430, default, k1);
}
