using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using SkiaSharp;
using StbImageSharp;
using WitnessMark.Maths;
using WitnessMark.OuterRoom.Pictures;
using WitnessMark.Stores.Photographs;
using WitnessMark.Tests;

namespace WitnessMark.OuterRoom.Tests.Pictures;

public class SmallPictureTests
{
    static readonly SkiaPictures Maker = new();

    static readonly SmallSize[] Both = [SmallSize.List, SmallSize.View];

    static readonly (int, int, int) Red = (255, 0, 0), Lime = (0, 255, 0);

    [Theory]
    [InlineData(1, "left top", "right top"), InlineData(2, "right top", "left top"), InlineData(3, "right bottom", "left bottom"), InlineData(4, "left bottom", "right bottom")]
    [InlineData(5, "left top", "left bottom"), InlineData(6, "right top", "right bottom"), InlineData(7, "right bottom", "right top"), InlineData(8, "left bottom", "left top")]
    [Truth(Grade.Published, "Exif 2.3, tag 0x0112, where the first row and column belong; pixels read by StbImageSharp")]
    public void A_turned_picture_is_set_upright(int turn, string red, string lime)
    {
        var small = Maker.Smaller(Shot.Turned(Shot.Fields(640, 480, SKEncodedImageFormat.Jpeg), turn), [SmallSize.List])[0];
        var seen = ImageResult.FromMemory(small, ColorComponents.RedGreenBlue);
        Assert.Equal(turn >= 5 ? (240, 320) : (320, 240), (seen.Width, seen.Height));
        Assert.Equal((red, lime), (FieldOf(seen, Red), FieldOf(seen, Lime)));
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MetadataExtractor 2.4 finds no camera notes in what is made")]
    public void Nothing_but_pixels_is_in_a_small_picture() =>
        Assert.All(Maker.Smaller(Shot.Turned(Shot.Fields(640, 480, SKEncodedImageFormat.Jpeg), 6), Both), made =>
            Assert.DoesNotContain(ImageMetadataReader.ReadMetadata(new MemoryStream(made)), d => d is ExifDirectoryBase));

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg), InlineData(SKEncodedImageFormat.Png), InlineData(SKEncodedImageFormat.Webp)]
    [Truth(Grade.SecondImplementation, "StbImageSharp 2.30 reads the sizes")]
    public void Each_kind_is_made_smaller_and_never_larger(SKEncodedImageFormat format)
    {
        var made = Maker.Smaller(Shot.Fields(800, 600, format), Both).Select(m => ImageResult.FromMemory(m)).ToArray();
        Assert.Equal([(320, 240), (800, 600)], made.Select(m => (m.Width, m.Height)));
        Assert.Equal("left top", FieldOf(made[0], Red));
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "StbImageSharp 2.30 reads the sizes")]
    public void A_picture_of_forty_million_pixels_is_made_smaller()
    {
        var made = Maker.Smaller(Shot.Fields(7296, 5472, SKEncodedImageFormat.Jpeg, SKColorType.Rgb565), Both).Select(m => ImageResult.FromMemory(m)).ToArray();
        Assert.Equal([(320, 240), (1600, 1200)], made.Select(m => (m.Width, m.Height)));
    }

    [Fact]
    [Truth(Grade.Property, "a file spoilt at any place is made smaller or refused and never brings the program down")]
    public void A_spoilt_file_never_brings_the_program_down()
    {
        var chance = new Random(20310528);
        var (made, refused) = (0, 0);
        foreach (var format in new[] { SKEncodedImageFormat.Jpeg, SKEncodedImageFormat.Png, SKEncodedImageFormat.Webp })
            for (var i = 0; i < 60; i++)
            {
                var file = Shot.Fields(96, 64, format);
                for (var k = 0; k < 6; k++) file[chance.Next(4, file.Length)] = (byte)chance.Next(256);
                try
                {
                    Assert.Equal(2, Maker.Smaller(file, Both).Count);
                    made++;
                }
                catch (RefusedException)
                {
                    refused++;
                }
            }
        Assert.True(refused > 0 && made > 0, $"{made} made, {refused} refused");
    }

    [Fact]
    [Truth(Grade.Property, "the mark is there with a white rim and the rest as it was; pixels read by StbImageSharp 2.30")]
    public void What_is_drawn_is_burnt_into_a_new_picture()
    {
        var picture = Shot.Fields(1000, 500, SKEncodedImageFormat.Png);
        var marked = ImageResult.FromMemory(Maker.Marked(picture, [new("M100 100L300 100", "#0c0c0c", 20)], 1000), ColorComponents.RedGreenBlue);
        Assert.Equal((1000, 500), (marked.Width, marked.Height));
        Assert.True(Near(marked, 200, 100, (12, 12, 12)) && Near(marked, 200, 116, (255, 255, 255)) && Near(marked, 200, 180, Red));
    }

    static string FieldOf(ImageResult seen, (int, int, int) colour)
    {
        foreach (var (x, across) in new[] { (seen.Width / 4, "left"), (seen.Width * 3 / 4, "right") })
            foreach (var (y, down) in new[] { (seen.Height / 4, "top"), (seen.Height * 3 / 4, "bottom") })
                if (Near(seen, x, y, colour)) return $"{across} {down}";
        return "nowhere";
    }

    static bool Near(ImageResult seen, int x, int y, (int R, int G, int B) colour)
    {
        var at = (y * seen.Width + x) * (int)seen.Comp;
        return Math.Abs(seen.Data[at] - colour.R) < 40 && Math.Abs(seen.Data[at + 1] - colour.G) < 40 && Math.Abs(seen.Data[at + 2] - colour.B) < 40;
    }
}
