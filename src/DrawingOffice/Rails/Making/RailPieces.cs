using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>The pieces of sheet for a rail, with the way chosen for each flange.</summary>
static class RailPieces
{
    public static ImmutableArray<Piece> Of(RailForm form, ImmutableArray<PlacedHole> holes, IReadOnlyList<MadeFlange> chosen, ImmutableArray<LaterHole> later)
    {
        var apart = chosen.Where(c => c.Way.Kind == WayKind.Separate).Select(c => c.Edge).ToList();
        var pieces = ImmutableArray.CreateBuilder<Piece>();
        pieces.Add(Web(form, holes, chosen, later, apart));
        foreach (var edge in apart) pieces.Add(Flange(form, edge, holes));
        return pieces.ToImmutable();
    }

    static Piece Web(RailForm form, ImmutableArray<PlacedHole> holes, IReadOnlyList<MadeFlange> chosen, ImmutableArray<LaterHole> later, List<FoldEdge> apart)
    {
        var witnesses = ImmutableArray.CreateBuilder<Witness>();
        List<Corner> Side(FoldEdge edge)
        {
            if (edge.Shape is not { } shape) return RailOutline.Beside(edge, _ => 0, true, []);
            // A flange of its own covers the web's edge: the web stops a thickness short of the outside.
            if (apart.Contains(edge)) return RailOutline.Beside(edge, _ => Math.Max(0, shape.Setback - shape.Thickness), false, []);
            var (vees, slits, _) = chosen.First(c => c.Edge == edge).Cuts;
            foreach (var along in slits) witnesses.Add(Across(edge, along, "slit"));
            foreach (var v in vees.Select(v => v.Along).Concat(edge.Wedges.Where(w => w.Open).Select(w => w.Along)))
                witnesses.Add(new("", [edge.Place(v) is var p ? p.At + p.Out * shape.Allowance : default]));
            return RailOutline.Beside(edge, edge.DevelopedAt, true, vees);
        }
        var (low, high) = (Side(form.Lower), Side(form.Upper));
        RailOutline.AddFeet(form.Lower, low, form.Upper, high);
        var outline = RailOutline.Closed(low, high);
        for (var k = 0; k < form.Rail.Stations.Length; k++)
            witnesses.Add(new($"{k + 1}", [form.Lower.Line.At(form.Lower.Marks[k]), form.Upper.Line.At(form.Upper.Marks[k])]));
        // A flange of its own is neither worked nor cut, so every hole that waits lies on this piece.
        witnesses.AddRange(later.Select(l => l.Spot));
        return new(apart.Count == 0 ? "blank" : "web", form.Rail.Thickness, outline)
        {
            Openings = [.. holes.Where(h => !apart.Any(e => e.Owns(h.Hole.Face)) && !later.Any(l => l.Hole == h)).Select(h => h.OnBlank)],
            Creases = [.. chosen.Where(c => !apart.Contains(c.Edge)).SelectMany(c => Folds(c.Edge)), .. Creases(form)],
            Witnesses = witnesses.ToImmutable(),
        };
    }

    static Witness Across(FoldEdge edge, double along, string words)
    {
        var p = edge.Place(along);
        return new(words, [p.At + p.Out * edge.Shape!.Allowance, p.At + p.Out * edge.DevelopedAt(along)]);
    }

    static IEnumerable<Crease> Folds(FoldEdge edge)
    {
        var shape = edge.Shape!;
        ImmutableArray<Vec2> Line(Func<double, double> flat) => RailOutline.Points(RailOutline.Beside(edge, flat, false, []));
        yield return new($"{edge.Name} fold", Line(_ => shape.Allowance / 2), shape.Towards * shape.Angle, shape.InsideRadius, shape.Allowance);
        if (shape.LipTurn != 0)
            yield return new($"{edge.Name} lip fold", Line(a => shape.Allowance + shape.Flat(edge.FlangeAt(a)) + shape.LipAllowance / 2), shape.Towards * shape.LipTurn * shape.LipAngle, shape.InsideRadius, shape.LipAllowance);
    }

    static IEnumerable<Crease> Creases(RailForm form)
    {
        for (var i = 0; i < form.Plan.Count; i++)
        {
            if (!form.Plan.Creases[i]) continue;
            var x = form.Plan.StartOf(i) + form.Plan.Flats[i] / 2;
            var (low, high) = (AtX(form.Lower, x), AtX(form.Upper, x));
            yield return new($"crease at {form.Lower.BaseAt(low):0}", [form.Lower.Line.At(low), form.Upper.Line.At(high)], form.Plan.TurnAt(x), form.Rail.InsideRadius, form.Plan.Flats[i]);
        }
    }

    static double AtX(FoldEdge edge, double x) => edge.Parts.Where(p => p.InCrease && edge.Line.At(p.Middle) is var q && Math.Abs(q.X - x) < edge.Rail.InsideRadius + edge.Rail.Thickness)
        .Select(p => (p.From, p.To)).Aggregate((A: double.MaxValue, B: double.MinValue), (s, p) => (Math.Min(s.A, p.From), Math.Max(s.B, p.To)), s => (s.A + s.B) / 2);

    static Piece Flange(RailForm form, FoldEdge edge, ImmutableArray<PlacedHole> holes)
    {
        var sheet = FlangeSheet.Of(edge);
        var outline = RailOutline.Closed(RailOutline.Beside(sheet.Line, _ => 0, false, []), RailOutline.Beside(sheet.Line, sheet.WidthAt, false, []));
        var creases = ImmutableArray.CreateBuilder<Crease>();
        if (edge.Shape!.LipTurn != 0)
            creases.Add(new($"{edge.Name} lip fold", RailOutline.Points(RailOutline.Beside(sheet.Line, sheet.LipFoldAt, false, [])), edge.Shape.LipTurn * edge.Shape.LipAngle, form.Rail.InsideRadius, edge.Shape.LipAllowance));
        Witness Station(int k)
        {
            var (a, _) = sheet.Place(edge.Marks[k], edge.Shape!.Allowance - edge.Shape.Setback);
            var (b, _) = sheet.Place(edge.Marks[k], edge.DevelopedAt(edge.Marks[k]));
            return new($"{k + 1}", [a, b]);
        }
        Opening Moved(PlacedHole h)
        {
            var (at, along) = sheet.Place(h.Along, h.Flat);
            return h.Hole.Shape.Moved(new(at, along));
        }
        return new($"{edge.Name} flange", form.Rail.Thickness, outline)
        {
            Openings = [.. holes.Where(h => edge.Owns(h.Hole.Face)).Select(Moved)],
            Creases = creases.ToImmutable(),
            Witnesses = [.. Enumerable.Range(0, edge.Marks.Length).Select(Station)],
            Notes = ["The long edge at the bottom lies on the web's edge; roll or bend the piece to it, it does not stretch."],
        };
    }
}
