using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Puts the kit of a rail together.</summary>
static class RailKit
{
    public static Parsed<Kit> Of(RailForm form, BendMethod method, ImmutableArray<PlacedHole> holes, ImmutableArray<EdgeWays> ways, ImmutableArray<Way> chosen, ImmutableArray<Caution> holeCautions)
    {
        var rail = form.Rail;
        var made = form.Folds.Select((edge, i) => new MadeFlange(edge, ways[i].Strain, chosen[i], FlangeCuts.Of(edge, ways[i].Strain, chosen[i], holes))).ToList();
        var later = LaterHoles.Of(made, holes);
        var pieces = RailPieces.Of(form, holes, made, later);
        foreach (var piece in pieces)
            if (Crossings.Of(piece.Outline.Flatten(0.01).AsSpan(), 1) is [var at, ..])
                return Refusal.Of($"piece {piece.Name}", $"x {at.At.X:0.0}, y {at.At.Y:0.0}", "it would lie over itself there; take another proposal, narrow the flange or ease the corner");
        var kit = new Kit(rail.Title, [.. pieces.Select(p => p with { Handed = rail.Hand == Hand.Both })])
        {
            Shape = RailBody.Of(form, holes),
            Formers = [.. made.Where(m => m.Way.Kind == WayKind.Hammer).Select(m => m.Edge.Shape!.Towards).Distinct().Select(t => RailFormer.Of(form, t))],
            Seams = [.. made.SelectMany(m => Seams(form, m.Edge, m.Way))],
            Steps = Steps(form, made, holes, later),
            Listings = RailLists.Of(form, ways, holes),
            Cautions = [.. Cautions(form, method, made), .. holeCautions, .. later.Select(l => l.Caution)],
        };
        return rail.Hand == Hand.Right ? RailMirror.Of(kit) : kit;
    }

    static IEnumerable<Seam> Seams(RailForm form, FoldEdge edge, Way way)
    {
        var t = form.Rail.Thickness;
        // A butt in sheet up to 1.5 mm is closed tight, thicker it stands half its thickness open (common practice).
        var gap = t <= 1.5 ? 0 : t / 2;
        if (way.Kind == WayKind.Separate)
        {
            yield return new($"{edge.Name} corner", $"web and {edge.Name} flange", SeamKind.Corner, edge.Line.Length, 0.7 * t, gap, 1,
                "Outside corner: tack every 30 to 40 mm from the middle outwards, then short runs to and fro, letting it cool between (common practice).");
            yield break;
        }
        foreach (var (w, i) in edge.Wedges.Select((w, i) => (w, i)))
            yield return new($"{edge.Name} {(w.Angle > 0 ? "opening" : "V")} {i + 1}", $"{edge.Name} flange at {edge.BaseAt(w.Along):0} mm", SeamKind.Butt, edge.DevelopedAt(w.Along) - edge.Shape!.Allowance, t, gap, 1,
                w.Angle > 0 ? "Let a piece of the same sheet into the opening and weld both sides of it." : "Close the V and weld it through, dress flush where a part seats.");
        if (way.Cuts > 0)
            yield return new($"{edge.Name} notches", $"{edge.Name} flange with itself", SeamKind.Butt, way.Cuts * way.CutDepth, t, gap, way.Cuts, "Weld each V shut from its tip to the edge, every other one first; fill openings with the same sheet.");
    }

    static ImmutableArray<string> Steps(RailForm form, List<MadeFlange> made, ImmutableArray<PlacedHole> holes, ImmutableArray<LaterHole> later)
    {
        var steps = ImmutableArray.CreateBuilder<string>();
        steps.Add("Cut the pieces, deburr every edge that will stretch, and prick the station lines and bend lines through lightly.");
        if (form.Folds.Any(f => f.Wedges.Length > 0)) steps.Add($"Drill {Math.Max(3, 2 * form.Rail.Thickness):0.#} mm at the tip of every V and slit before bending.");
        if (holes.Length > later.Length) steps.Add(later.Length == 0 ? "Cut the holes." : "Cut the holes that are drawn; leave the others pricked.");
        foreach (var (edge, _, way, _) in made) steps.Add($"{char.ToUpperInvariant(edge.Name[0])}{edge.Name[1..]} flange. {way.Words}");
        if (form.Plan.Creases.Any(c => c)) steps.Add("Crease the web at its crease lines after the flanges are up; the flange's V closes and its slit opens as you go.");
        if (form.Plan.Course.Steps.Zip(form.Plan.Creases, (s, c) => s.Curvature != 0 && !c).Any(b => b)) steps.Add("Roll or press the web to its plan before the flanges are closed, against a template of the plan.");
        steps.Add("Offer the rail up to the station table on a flat bench; correct " + (made.Any(m => m.Way.WeldLength > 0) ? "twist and length while the welds are only tacks." : "twist and bends before it is fitted."));
        if (later.Length > 0) steps.Add($"Make the holes that were left: {string.Join("; ", later.Select(l => l.Words))}.");
        if (holes.Any(h => h.Hole.Nut is not null)) steps.Add("Fix the nuts listed, with a greased screw in each to hold it true.");
        return steps.ToImmutable();
    }

    static IEnumerable<Caution> Cautions(RailForm form, BendMethod method, List<MadeFlange> made)
    {
        foreach (var (name, angle) in new[] { ("lower fold", form.Rail.LowerAngle), ("upper fold", form.Rail.UpperAngle) })
            foreach (var words in method.For(angle, form.Rail.InsideRadius, form.Rail.Thickness).Value.Cautions)
                yield return new(CautionKind.AllowanceRange, $"The {name}: {words}.", [name]);
        foreach (var (edge, strain, way, _) in made)
        {
            if (!way.Reachable) yield return new(CautionKind.OutsideRange, $"This is not within reach. {way.Words}", [edge.Name]);
            if (way.Kind is WayKind.Hammer && strain.Stretch > EdgeStrain.Unseen) yield return new(CautionKind.Stretch, $"The {edge.Name} flange stretches {strain.Stretch * 100:0.0} % at its edge: file the edge smooth, no nick may be left.", [edge.Name], strain.Stretch);
            if (way.Kind is WayKind.Hammer && strain.Shrink > EdgeStrain.Unseen) yield return new(CautionKind.Shrink, $"The {edge.Name} flange shrinks {strain.Shrink * 100:0.0} % at its edge: take the buckles down as they rise, never fold one over.", [edge.Name], strain.Shrink);
        }
        if (form.Twisted) yield return new(CautionKind.OutsideRange, "The section turns along the rail, so no flat sheet makes the web without strain: have the blank checked against a mesh, and leave it long and trim.", []);
        if (made.Any(m => m.Way.WeldLength > 0)) yield return new(CautionKind.Weld, "Welding: shield eyes and skin from the arc, draw off the fumes, grind zinc and paint away first, and watch for fire for an hour after.", []);
        yield return new(CautionKind.Strength, "A rail that carries the vehicle is a structural part: a copy from pieces is no proof of strength. Follow local rules and have the work judged by a licensed engineer before the road.", []);
        yield return new(CautionKind.Safety, "Cut sheet edges are sharp: gloves for handling, none near a drill.", []);
    }
}
