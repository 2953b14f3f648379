using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>Cautions, seams and figures that all these shapes share.</summary>
static class Words
{
    public static ImmutableArray<Caution> Safety { get; } =
    [
        Said("Fresh edges cut: wear gloves and take the burr off before rolling. Rolls draw a glove in: hold the sheet well back from them, bare-handed at the rolls."),
        Said("Welding burns eyes and skin by its light and gives off fumes: screen, mask, gloves and moving air. Grind zinc, paint and plating off both sides first; zinc fumes make ill. Keep a fire watch for an hour after."),
        Said("Never weld, braze or grind on a tank, filler or drum that has held fuel: fumes in it explode. Leave it to a licensed shop. Gas lines, pressure vessels and what carries load follow local rules and licensed practice."),
        Said("A pipe for exhaust must be tight before anyone sits over it: exhaust gas kills without smell. Test every seam with soapy water and air."),
    ];

    static Caution Said(string words) => new(CautionKind.Safety, words, []);

    /// <summary>What the outlines themselves give cause for.</summary>
    public static IEnumerable<Caution> Outlines(IEnumerable<Piece> pieces)
    {
        foreach (var piece in pieces)
            if (Crossings.Of(piece.Outline.Flatten(0.05).AsSpan(), 1) is [var first, ..])
                yield return new(CautionKind.BlankOverlaps,
                    $"{piece.Name} laid flat runs into itself near {first.At.X:0.#}, {first.At.Y:0.#} mm; make it in two pieces or move the seam.", [piece.Name]);
    }

    public static Seam Seam(string id, Asked asked, double length, string between)
    {
        var lap = asked.Seam.Lap;
        return lap > 0
            ? new(id, between, SeamKind.Fillet, length, asked.Thickness, 0, 1, $"lapped {Say.Mm(lap)}; tack from the middle outwards every 25 to 40 mm, then weld or braze in short runs (common practice)")
            : new(id, between, SeamKind.Butt, length, asked.Thickness, 0, 1, "butted close; tack from the middle outwards every 25 to 40 mm, planish level, then weld in short runs (common practice)");
    }

    /// <summary>To which layer it was laid out.</summary>
    public static string Layer(Asked asked) =>
        $"sizes are to the {(asked.Sizes == Surface.Mean ? "middle of the wall" : $"{asked.Sizes.ToString().ToLowerInvariant()} surface")}; laid out at {(asked.Neutral == 0.5 ? "mid-thickness" : $"{asked.Neutral:0.##} of the thickness from the inside")}, which keeps its length in rolling";

    /// <summary>For which surface a paper is drawn.</summary>
    public static string PaperFor(Wrapping w) =>
        $"the template goes round the outside and allows for paper {w.Paper:0.##} mm thick; print it at full size and check its girth line against the tube before marking";

    public static Listing Errors(Accuracy a) => new("How true it is", ["what", "figure"],
    [
        ["flat triangles", a.Triangles == 0 ? "none: laid out exactly" : $"{a.Triangles}"],
        [a.Triangles == 0 ? "drawn curves keep to the true ones within" : "no point of the true shape is further off than", Say.Mm(a.Chord, 3)],
        ["the worse edge falls short, once round, by", Say.Mm(a.Short, 3)],
        ["folded up again, furthest point off", a.Refold < 1e-6 ? "under 0.000001 mm" : Say.Mm(a.Refold, 6)],
    ]);
}
