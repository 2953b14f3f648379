using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;
using WitnessMark.Tests.FrontOffice.MeasurePhoto;
using static System.FormattableString;

namespace WitnessMark.Bench;

/// <summary>Makes demo/photos/horn-plate.jpg and its trace, and the same picture at 12 million pixels to take the time with.</summary>
static class Photographs
{
    /// <summary>Held upright; written lying, with the turn in its notes, as phones do.</summary>
    static readonly Shot Demo = new(1500, 2000, Above: 330, Tilt: 16 * Math.PI / 180, Focal35: 27, K1: -0.02, Target.A4) { Rays = 3, Noise = 1 };

    const int Focal35 = 27, LyingTurn = 6;

    public static void Write(string folder)
    {
        Directory.CreateDirectory(folder);
        File.WriteAllBytes(Path.Combine(folder, "horn-plate.jpg"), JpegMaker.Write(Lying(Demo.Take(1)), 82, JpegMaker.Notes(LyingTurn, Focal35)));
        var large = Demo with { Width = 3000, Height = 4000, Rays = 2 };
        File.WriteAllBytes(Path.Combine(folder, "horn-plate-12mp.jpg"), JpegMaker.Write(Lying(large.Take(2)), 90, JpegMaker.Notes(LyingTurn, Focal35)));
        File.WriteAllText(Path.Combine(folder, "horn-plate.json"), Trace());
    }

    /// <summary>Upright to lying, so that turn 6 sets it upright again.</summary>
    static Raster Lying(Raster up)
    {
        var pixels = new byte[up.Pixels.Length];
        for (var y = 0; y < up.Width; y++)
            for (var x = 0; x < up.Height; x++) pixels[y * up.Height + x] = up.Pixels[x * up.Width + up.Width - 1 - y];
        return new(up.Height, up.Width, 1, pixels);
    }

    /// <summary>Where a person would click: near the middle of each hole and near the corners, a few px off.</summary>
    static string Trace()
    {
        var chance = new Chance(3);
        string Click(Vec2 plate)
        {
            var px = Demo.Px(HornPlate.OnSheet(plate) is var p ? new Vec3(p.X, p.Y, HornPlate.Thickness) : default);
            return Invariant($"[{px.X + 3 * chance.Normal():0}, {px.Y + 3 * chance.Normal():0}]");
        }
        double w = HornPlate.Width / 2, h = HornPlate.Height / 2, r = HornPlate.Corner, c = HornPlate.CutOff;
        Vec2[] around = [new(-w + r, -h), new(0, -h), new(w - r, -h), new(w, -h + r), new(w, 0), new(w, h - c), new(w - c, h), new(0, h), new(-w + r, h), new(-w, h - r), new(-w, 0), new(-w, -h + r)];
        var picks = HornPlate.Holes.Select(hole => $$"""    { "name": "{{hole.Name}}", "kind": "hole", "clicks": [{{Click(hole.At)}}] }""")
            .Append($$"""    { "name": "E", "kind": "outline", "closed": true, "clicks": [{{string.Join(", ", around.Select(Click))}}] }""");
        return Invariant($$"""
            {
              "target": "a4",
              "check_x": 100,
              "check_y": 100,
              "thickness": {{HornPlate.Thickness}},
              "across": {{Demo.Width}},
              "picks": [
            {{string.Join(",\n", picks)}}
              ]
            }

            """);
    }
}
