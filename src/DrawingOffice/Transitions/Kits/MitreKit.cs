using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>Two like tubes sawn on one plane: the template of either, the joint an ellipse of half-axes r and r / cos(half the turn).</summary>
public static class MitreKit
{
    public static Parsed<Made> Of(AskedMitre asked)
    {
        var (inner, layer, outer) = asked.Radii(asked.Diameter);
        if (asked.Wrapping.Check() is { } paper) return paper;
        if (!(inner > 0) || !double.IsFinite(outer)) return Refusal.Of("diameter", $"{asked.Diameter:0.###} mm", "give more than twice the wall");
        if (!(asked.Angle > 0 && asked.Angle <= Most)) return Refusal.Of("angle", Say.Degrees(asked.Angle), $"give what the run turns, over 0 up to {Say.Degrees(Most)}");
        var half = asked.Angle / 2;
        var plane = new AgainstPlane(Math.PI / 2 - half);
        // A saw goes through the whole wall in one plane, so the outside line is its own; a rolled sheet is cut flat at its middle.
        var radius = asked.OfSheet ? layer : outer;
        double Cut(double t) => plane.Height(radius, t);
        var top = Cut(0) + Wrap.Margin;
        if (!(asked.Length >= top)) return Refusal.Of("length", $"{asked.Length:0.###} mm", $"give at least {top:0.#} mm, so that {Wrap.Margin:0} mm of whole tube are left above the cut");
        var seam = asked.Seam.Place == SeamPlace.Angle ? asked.Seam.Angle : Math.PI;
        var w = asked.Wrapping;
        var piece = asked.OfSheet
            ? Rolled.Sheet("tube blank", asked, layer, Cut, _ => asked.Length, seam, w.Stations) with { Quantity = 2 }
            : Wrap.Template("mitre template", outer, Cut, top, seam, w, asked.Error) with { Paper = true };
        var joint = Quadrature.Over(0, Math.Tau, t => outer * Math.Sqrt(1 + Math.Pow(Math.Tan(half) * Math.Sin(t), 2)));
        var accuracy = new Accuracy(0, asked.Error, 0, 0);
        var kit = new Kit(asked.Title, [piece])
        {
            Shape = Shape(asked, plane, inner, outer),
            Seams = [.. Rolling(asked, asked.Length - Cut(seam)), new("J1", "the two tubes", SeamKind.Butt, joint, asked.Thickness, 0, 1, "tack at throat and heel, check the angle on a board, tack both sides, weld in quarters turn about")],
            Listings =
            [
                new("The cut", ["what", "figure"],
                [
                    ["saw set over by", Say.Degrees(half)],
                    ["throat, from the square end", Say.Mm(asked.Length - Cut(0))],
                    ["heel, from the square end", Say.Mm(asked.Length - Cut(Math.PI))],
                    ["joint across its longest", Say.Mm(2 * outer / Math.Cos(half))],
                ]),
                Wrap.Ordinates("Ordinates", asked.OfSheet ? layer : outer + w.Paper / 2, Cut, asked.OfSheet ? asked.Length : top, seam, w.Stations),
                Words.Errors(accuracy),
            ],
            Steps =
            [
                $"Measure the tube's outside with a tape (girth over 3.1416); {(asked.OfSheet ? Words.Layer(asked) : Words.PaperFor(asked.Wrapping))}.",
                asked.OfSheet ? "Cut both blanks, roll and close their seams."
                    : $"Scribe a line square round each tube {Say.Mm(asked.Length - top)} from its square end, wrap the template with its straight edge on it, mark and saw in one plane.",
                "Lay both on a board with the throats together, check the angle, tack and join.",
            ],
            Cautions = [.. Words.Outlines([piece]), .. Words.Safety],
        };
        return new Made(asked, kit, accuracy);
    }

    static IEnumerable<Seam> Rolling(AskedMitre asked, double length) =>
        asked.OfSheet ? [.. Enumerable.Range(1, 2).Select(i => Words.Seam($"S{i}", asked, length, $"both edges of tube {i}"))] : [];

    /// <summary>Beyond this the cut runs out into a knife edge, radians.</summary>
    const double Most = 160 * Math.PI / 180;

    /// <summary>The first tube comes up along z to the origin, the second goes on from there, turned about y.</summary>
    static Body Shape(AskedMitre asked, AgainstPlane plane, double inner, double outer)
    {
        // Each tube in a frame whose z runs from the joint along it; throats face each other.
        var (s, c) = Math.SinCos(asked.Angle);
        Motion3[] frames = [new(new(1, 0, 0), new(0, -1, 0), new(0, 0, -1), Vec3.Zero), new(new(c, 0, -s), new(0, 1, 0), new(s, 0, c), Vec3.Zero)];
        IEnumerable<Facet> Tube(Motion3 frame)
        {
            Vec3[] Ring(double radius, Func<double, double> height) => Tubing.Ring(t => frame.Map(Vec2.Polar(t, radius), height(t)));
            return Tubing.Of([Ring(outer, t => plane.Height(outer, t)), Ring(outer, _ => asked.Length)], [Ring(inner, t => plane.Height(inner, t)), Ring(inner, _ => asked.Length)]);
        }
        return new([.. frames.SelectMany(Tube)], []);
    }
}
