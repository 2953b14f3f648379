using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A branch on a round main or on a plate: the template or blank of the branch and the template of the hole.</summary>
public static class SaddleKit
{
    /// <summary>Under this the cut runs out into a knife edge, radians.</summary>
    const double Flattest = 10 * Math.PI / 180;

    public static Parsed<Made> Of(AskedSaddle asked)
    {
        if (Refused(asked) is { } refusal) return refusal;
        var (inner, layer, outer) = asked.Radii(asked.Diameter);
        var against = Met(asked);
        double Cut(double t) => against.Height(asked.Touching, inner, outer, t);
        var seam = asked.Seam.Place == SeamPlace.Angle ? asked.Seam.Angle : Math.PI;
        var top = Highest(Cut) + Wrap.Margin;
        if (top > asked.Length) return Refusal.Of("length", $"{asked.Length:0.###} mm", $"give at least {top:0.#} mm, so that {Wrap.Margin:0} mm of whole tube are left above the cut");
        var w = asked.Wrapping;
        var branch = asked.OfSheet
            ? Rolled.Sheet("branch blank", asked, layer, Cut, _ => asked.Length, seam, w.Stations)
            : Wrap.Template("branch template", outer, Cut, top, seam, w, asked.Error) with { Paper = true };
        var hole = HoleTemplate.Of(asked, asked.Through ? outer : inner) with { Paper = true };
        var weld = HoleTemplate.Length(asked, outer);
        ImmutableArray<Piece> pieces = [branch, hole];
        var accuracy = new Accuracy(0, asked.Error, 0, 0);
        var ordinates = asked.OfSheet
            ? Wrap.Ordinates("Ordinates of the branch blank", layer, Cut, asked.Length, seam, w.Stations)
            : Wrap.Ordinates("Ordinates of the branch template", outer + w.Paper / 2, Cut, top, seam, w.Stations);
        var kit = new Kit(asked.Title, pieces)
        {
            Shape = SaddleBody.Of(asked, inner, outer, Cut),
            Seams = [.. Rolling(asked, asked.Length - Cut(seam)), new("J1", "branch and main", SeamKind.Fillet, weld, asked.Thickness, 0, 1, "tack at throat, heel and both sides; weld in quarters, opposite ones in turn, so that the branch is not drawn over")],
            Listings = [ordinates, Gaps(asked, against, inner, outer, seam), HoleTemplate.Ordinates(asked, asked.Through ? outer : inner), Words.Errors(accuracy)],
            Steps = Steps(asked, top),
            Cautions = [.. Fit(asked, against, inner, outer), .. Words.Outlines(pieces), .. Words.Safety],
        };
        return new Made(asked, kit, accuracy);
    }

    /// <summary>What the branch is cut to meet: the outside of the main, or its bore when the branch passes in.</summary>
    public static Against Met(AskedSaddle asked) => asked.Main.Radius is { } main
        ? new AgainstTube(asked.Through ? main - asked.Main.Wall : main, asked.Angle, asked.Offset)
        : new AgainstPlane(asked.Angle, asked.Through ? asked.Main.Wall : 0);

    static Refusal? Refused(AskedSaddle asked)
    {
        if (asked.Wrapping.Check() is { } paper) return paper;
        var (inner, _, outer) = asked.Radii(asked.Diameter);
        if (!(inner > 0) || !double.IsFinite(outer)) return Refusal.Of("branch, diameter", $"{asked.Diameter:0.###} mm", "give more than twice the wall");
        if (!(asked.Angle >= Flattest && asked.Angle <= Math.PI / 2 + 1e-12)) return Refusal.Of("angle", Say.Degrees(asked.Angle), $"give {Say.Degrees(Flattest)} to 90°, the smaller angle between the two");
        if (!(asked.Main.Wall >= 0) || !double.IsFinite(asked.Main.Wall)) return Refusal.Of("main, wall", $"{asked.Main.Wall:0.###} mm", "give 0 mm or more");
        if (asked.Main.Radius is not { } main) return null;
        if (!(main > asked.Main.Wall) || !double.IsFinite(main)) return Refusal.Of("main, diameter", $"{2 * main:0.###} mm", "give more than twice its wall");
        var room = (asked.Through ? main - asked.Main.Wall : main) - Math.Abs(asked.Offset);
        return outer <= room * (1 + 1e-12) ? null : Refusal.Of("branch, diameter", $"{2 * outer:0.###} mm outside",
            $"give at most {2 * room:0.###} mm, what the {(asked.Through ? "bore" : "outside")} of the main takes{(asked.Offset == 0 ? "" : " with this offset")}");
    }

    static IEnumerable<Seam> Rolling(AskedSaddle asked, double length) => asked.OfSheet ? [Words.Seam("S1", asked, length, "both edges of the branch blank")] : [];

    /// <summary>Over the turn, by steps so fine that no more than a hundredth of a millimetre is missed on a metre.</summary>
    static double Highest(Func<double, double> cut) => Enumerable.Range(0, 720).Max(k => cut(Math.PI * k / 360));

    /// <summary>How far the edge that does not touch stands open, along the branch.</summary>
    static Listing Gaps(AskedSaddle asked, Against against, double inner, double outer, double seam) => new("Gap to fill at the edge that does not touch",
        ["station", "touches first", "gap along the branch"],
        [.. Enumerable.Range(0, asked.Wrapping.Stations).Select(k =>
        {
            var t = seam + Math.Tau * k / asked.Wrapping.Stations;
            var (i, o) = (against.Height(inner, t), against.Height(outer, t));
            return ImmutableArray.Create($"{k}", Math.Abs(i - o) < 0.005 ? "both" : i > o ? "inside edge" : "outside edge", Say.Mm(Math.Abs(i - o), 2));
        })]);

    static IEnumerable<Caution> Fit(AskedSaddle asked, Against against, double inner, double outer)
    {
        var turn = Enumerable.Range(0, 360).Select(k => k * Math.PI / 180).ToArray();
        var gap = turn.Max(t => Math.Abs(against.Height(inner, t) - against.Height(outer, t)));
        if (gap > asked.Thickness) yield return new(CautionKind.Weld, $"Where only one edge touches, the other stands open by up to {Say.Mm(gap)}: bevel the branch to fit, or fill in more than one run.", [], gap, asked.Thickness);
        var grind = asked.Touching == Touching.First ? 0 : turn.Max(t => against.Highest(inner, outer, t) - against.Height(asked.Touching, inner, outer, t));
        if (grind > 0.05) yield return new(CautionKind.OutsideRange, $"Cut to its {asked.Touching.ToString().ToLowerInvariant()} edge the branch fits only after up to {Say.Mm(grind)} is ground off the other edge.", [], grind, 0);
        if (asked.Main.Radius is { } main && outer > 0.9 * (main - Math.Abs(asked.Offset))) yield return new(CautionKind.Strength, "A branch nearly as wide as its main leaves little metal beside the hole; the main opens and bends there. Brace it while it is welded.", []);
    }

    static ImmutableArray<string> Steps(AskedSaddle asked, double top) =>
    [
        $"Check both tubes: measure their outside with a tape (girth over 3.1416) and the walls; {(asked.OfSheet ? Words.Layer(asked) : Words.PaperFor(asked.Wrapping))}.",
        asked.OfSheet ? "Cut the blank, roll it along the lines and close its seam."
            : $"Scribe a line square round the branch {Say.Mm(asked.Length - top)} from its square end and a line along it for the throat. Wrap the template with its straight edge on the first and its throat line on the second, tab under.",
        asked.OfSheet ? "Try the branch on the main and ease it with a file." : "Pop along the curve, cut square to the wall all round, and try it on the main.",
        $"Mark the middle of the joint and the line along the main, lay the hole template on with the arrowed side towards the throat, pop and cut. The hole is the {(asked.Through ? "outside" : "bore")} of the branch.",
        "Set the branch at its angle with a bevel gauge, tack, check, then join.",
    ];
}
