using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A segmented bend rolled from sheet: one end piece and one middle piece, each as many times as it is needed.</summary>
public static class ElbowKit
{
    const int Most = 60;
    const int Stations = 24;

    public static Parsed<Made> Of(AskedElbow asked)
    {
        var (inner, layer, outer) = asked.Radii(asked.Diameter);
        if (!(inner > 0) || !double.IsFinite(outer)) return Refusal.Of("diameter", $"{asked.Diameter:0.###} mm", "give more than twice the wall");
        if (!(asked.Angle > 0 && asked.Angle <= Math.PI + 1e-12)) return Refusal.Of("angle", Say.Degrees(asked.Angle), "give the bend from straight, over 0 up to 180°");
        if (!(asked.Radius > outer) || !double.IsFinite(asked.Radius)) return Refusal.Of("radius", $"{asked.Radius:0.###} mm", $"give more than half the tube, {outer:0.###} mm, or the throat runs into itself");
        if (!(asked.Tail >= 0) || !double.IsFinite(asked.Tail)) return Refusal.Of("tail", $"{asked.Tail:0.###} mm", "give 0 or more");
        var count = asked.Segments ?? Segments.Chosen(asked.Angle);
        if (count is < 2 or > Most) return Refusal.Of("segments", $"{count}", $"give 2 to {Most}, the half ones at the ends counted");
        var cut = new Segments(count, asked.Angle, asked.Radius);
        if (cut.Mitre >= Math.PI / 4 + 1e-12) return Refusal.Of("segments", $"{count} for {Say.Degrees(asked.Angle)}", "give more, so that no joint turns over 90°");

        // On the side the seam is long enough to work at and out of the tight throat.
        var seam = asked.Seam.Place == SeamPlace.Angle ? asked.Seam.Angle : Math.PI / 2;
        double Half(double t) => cut.Half(layer, t);
        var end = Rolled.Sheet("end piece", asked, layer, _ => -asked.Tail, Half, seam, Stations) with { Quantity = 2 };
        var middle = Rolled.Sheet("middle piece", asked, layer, t => -Half(t), Half, seam, Stations) with { Quantity = count - 2 };
        ImmutableArray<Piece> pieces = count > 2 ? [end, middle] : [end];
        var accuracy = new Accuracy(0, asked.Error, 0, 0);
        var joint = Quadrature.Over(0, Math.Tau, t => layer * Math.Sqrt(1 + Math.Pow(Math.Tan(cut.Mitre) * Math.Sin(t), 2)));
        var kit = new Kit(asked.Title, pieces)
        {
            Shape = Body(asked, cut, inner, outer),
            Seams =
            [
                .. Enumerable.Range(1, count).Select(i => Words.Seam($"S{i}", asked, i == 1 || i == count ? asked.Tail + Half(seam) : 2 * Half(seam), $"both edges of segment {i}")),
                .. Enumerable.Range(1, count - 1).Select(i => new Seam($"J{i}", $"segments {i} and {i + 1}", SeamKind.Butt, joint, asked.Thickness, 0, 1, "tack at throat, heel and both sides, check the angle, then weld in quarters turn about")),
            ],
            Listings =
            [
                new("Segments", ["what", "figure"],
                [
                    ["segments in all", $"{count}, of which {count - 2} whole and 2 half"],
                    ["each joint is cut at", Say.Degrees(cut.Mitre)],
                    ["each joint turns the tube by", Say.Degrees(2 * cut.Mitre)],
                    ["middle piece, throat", Say.Mm(2 * cut.Half(layer, 0))],
                    ["middle piece, heel", Say.Mm(2 * cut.Half(layer, Math.PI))],
                    ["end piece, throat", Say.Mm(asked.Tail + cut.Half(layer, 0))],
                    ["end piece, heel", Say.Mm(asked.Tail + cut.Half(layer, Math.PI))],
                    ["rise of the cut", Say.Mm(cut.Rise(layer, Math.PI))],
                    ["girth", Say.Mm(Math.Tau * layer)],
                    ["joints stand outside the true bend by", Say.Mm(cut.Departure)],
                ]),
                Ordinates(layer, cut, seam),
                Words.Errors(accuracy),
            ],
            Steps =
            [
                "Check bend, radius and tube against what they must join; " + Words.Layer(asked) + ".",
                "Nest the pieces heel against throat: every second one turned end for end fits on the last with one cut.",
                "Mark the throat line on every piece, cut out, roll along the lines and close the seams before any joint.",
                "Put them together on a flat board with the throat lines in one plane, every second piece turned end for end so that its seam stands on the other side.",
                "Tack all joints, check the whole angle and the ends against the board, then weld.",
            ],
            Cautions = [.. Words.Outlines(pieces), .. Words.Safety],
        };
        return new Made(asked, kit, accuracy);
    }

    static Listing Ordinates(double layer, Segments cut, double seam) => new("Ordinates of half a segment", ["station", "round from the seam", "half length"],
        [.. Enumerable.Range(0, Stations).Select(k => ImmutableArray.Create($"{k}", Say.Mm(Math.Tau * layer * k / Stations), Say.Mm(cut.Half(layer, seam + Math.Tau * k / Stations))))]);

    /// <summary>Bent in the xz plane about the origin: from (R, 0, 0) going up.</summary>
    static Body Body(AskedElbow asked, Segments cut, double inner, double outer)
    {
        Vec3[] Ring(double radius, double turn, double stretch, double tail) => Tubing.Ring(t =>
        {
            // Seen along the run the throat lies towards the middle of the bend.
            var (s, c) = Math.SinCos(turn);
            var from = (asked.Radius - radius * Math.Cos(t)) * stretch;
            return new(from * c - tail * s, -radius * Math.Sin(t), from * s + tail * c);
        });
        Vec3[][] Rings(double radius)
        {
            var rings = new List<Vec3[]>();
            if (asked.Tail > 0) rings.Add(Ring(radius, 0, 1, -asked.Tail));
            rings.Add(Ring(radius, 0, 1, 0));
            for (var j = 0; j < cut.Count - 1; j++) rings.Add(Ring(radius, (2 * j + 1) * cut.Mitre, 1 / Math.Cos(cut.Mitre), 0));
            rings.Add(Ring(radius, asked.Angle, 1, 0));
            if (asked.Tail > 0) rings.Add(Ring(radius, asked.Angle, 1, asked.Tail));
            return [.. rings];
        }
        return new([.. Tubing.Of(Rings(outer), Rings(inner))], []);
    }
}
