using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>All that is needed to make a split: blanks, welds in their order, setting tools, plug welds, steps and cautions.</summary>
public static class SplitKit
{
    /// <param name="rule">For plug welds; null as <see cref="Plugs.For"/>.</param>
    public static Parsed<Kit> Of(FaceModel model, SplitChoice choice, PlugRule? rule = null)
    {
        var welded = model.Joints.Where(j => !choice.Folded.Contains(j.Index)).ToImmutableArray();
        var lines = welded.Select(j => new WeldLine(j.Name, model.Points[j.From], model.Points[j.To])).ToImmutableArray();
        var order = Sequence.Of(lines, model.Pressing.Thickness);
        var plugs = ImmutableArray.CreateBuilder<(SpotRow Row, PlugWelds Welds)>();
        foreach (var row in model.Pressing.Spots)
        {
            var made = Plugs.For(row, rule);
            if (!made.Ok) return made.Refusal!;
            plugs.Add((row, made.Value));
        }
        var tools = Tools(model, welded);
        return new Kit(model.Pressing.Title, [.. choice.Pieces.Select(p => Piece.Of(p.Blank, p.Name) with { Notes = [$"Faces: {string.Join(", ", p.Faces.Select(f => model.Faces[f].Name))}."] })])
        {
            Shape = Whole(model, choice),
            Formers = [.. tools.SelectMany(t => t.Formers)],
            Seams = [.. welded.Select(j => Seam(model, j)), .. plugs.Select(p => new Seam(p.Row.Name, $"{p.Row.Face} onto {p.Row.Onto}", SeamKind.Plug, p.Row.Row, p.Welds.Hole, 0, p.Welds.Count, p.Welds.Words))],
            Listings = [.. lines.IsEmpty ? ImmutableArray<Listing>.Empty : [Angles(welded), Order(lines, order)], Why(choice)],
            Steps = [.. Steps(model, choice, welded, [.. tools.SelectMany(t => t.Joints)], plugs.Count > 0)],
            Cautions =
            [
                .. model.Cautions, .. SplitCautions.RoughAngles(model, choice), .. choice.Pieces.SelectMany(p => Concerning(p)), .. SplitCautions.HolesNearWelds(model, choice),
                .. plugs.SelectMany(p => p.Welds.Cautions), .. Safety.Sheet, .. welded.IsEmpty && plugs.Count == 0 ? [] : Safety.Welding,
            ],
        };
    }

    /// <summary>Joints of one angle that take the same tool share it. A joint whose angle no tool can hold, or whose points do not tell it, has none.</summary>
    static ImmutableArray<(ImmutableArray<Former> Formers, ImmutableArray<string> Joints)> Tools(FaceModel model, ImmutableArray<ModelJoint> welded)
    {
        var shared = new List<(AngleTool Tool, List<string> Joints)>();
        foreach (var joint in welded)
        {
            if (SplitCautions.TooRoughForTool(joint) || JointTool.Of(model, joint) is not { } tool) continue;
            var near = tool.Hole is null ? shared.FindIndex(s => s.Tool.Hole is null && Math.Abs(s.Tool.Angle - tool.Angle) <= Math.Max(Alike, tool.Std)) : -1;
            if (near >= 0) shared[near].Joints.Add(joint.Name);
            else shared.Add((tool, [joint.Name]));
        }
        var made = ImmutableArray.CreateBuilder<(ImmutableArray<Former>, ImmutableArray<string>)>();
        foreach (var (tool, joints) in shared)
            if (AngleBlock.Of(tool with { Name = $"setting tool {string.Join(", ", joints)}" }) is { Ok: true } kit)
                made.Add((kit.Value.Formers, [.. joints]));
        return made.ToImmutable();
    }

    // Nearer than this no one sets an angle by hand, radians.
    const double Alike = 0.1 * Math.PI / 180;

    // The overlap and order were tried in the search; what is left concerns holes and reliefs.
    static IEnumerable<Caution> Concerning(FoldedPiece p) => [.. p.Blank.Cautions, .. Check.HolesNearBends(p.Tree)];

    static Seam Seam(FaceModel model, ModelJoint j)
    {
        var t = model.Pressing.Thickness;
        var kind = WeldRules.Kind(j, t);
        var words = kind switch
        {
            SeamKind.Butt => $"square edges {N(WeldRules.RootGap(j, t))} mm apart, full depth",
            SeamKind.Fillet => $"{model.Faces[j.First].Name} runs through, {model.Faces[j.Second].Name} stops against it; fillet outside",
            _ => "inner edges touch, the open corner outside is filled flush",
        };
        return new(j.Name, $"{model.Faces[j.First].Name} and {model.Faces[j.Second].Name}", kind, j.Length, WeldRules.Size(t), WeldRules.RootGap(j, t), 1, $"{words} (common practice; try a scrap first).");
    }

    static Listing Angles(ImmutableArray<ModelJoint> welded) => new("Setting angles", ["joint", "between the faces", "±, 19 in 20", "weld length"],
        [.. welded.Select(j => ImmutableArray.Create(j.Name, $"{Deg(j.SettingAngle)}°", j.Std > 0 ? $"{Deg(2 * j.Std)}°" : "not given", $"{N(j.Length)} mm"))]);

    static Listing Order(ImmutableArray<WeldLine> lines, WeldOrder order) => new("Order of tacks and runs", ["no.", "what", "seam", "where along it"],
    [
        .. order.Tacks.Select((s, i) => ImmutableArray.Create($"{i + 1}", "tack", lines[s.Seam].Name, $"{N(s.From)} mm")),
        .. order.Runs.Select((s, i) => ImmutableArray.Create($"{order.Tacks.Length + i + 1}", "run", lines[s.Seam].Name, $"{N(s.From)} to {N(s.To)} mm")),
    ]);

    static Listing Why(SplitChoice choice) => new("Why it is split so", ["reason"],
        [.. choice.Reasons.Select(r => ImmutableArray.Create(r)), [$"In all {N(choice.WeldLength)} mm of weld, {choice.Folded.Length} folds, {choice.Pieces.Length} {(choice.Pieces.Length == 1 ? "piece" : "pieces")}; about {choice.Work.ToString("0", CultureInfo.InvariantCulture)} minutes by the weights in use."]]);

    static IEnumerable<string> Steps(FaceModel model, SplitChoice choice, ImmutableArray<ModelJoint> welded, ImmutableArray<string> tooled, bool plugs)
    {
        foreach (var p in choice.Pieces)
        {
            yield return $"Cut {p.Name}; deburr; scribe bend lines.";
            foreach (var s in p.Steps) yield return s.Fold is { } fold ? $"Fold {fold.Words}." : $"Hammer {model.Joints[s.Joint].Name} over a bar in the vice to {Deg(Math.Abs(model.Joints[s.Joint].Bend))}° from flat.";
        }
        if (welded.Length == 0 && !plugs) yield break;
        if (welded.Length > 0)
        {
            var bare = welded.Select(j => j.Name).Where(n => !tooled.Contains(n)).ToArray();
            if (tooled.Length > 0) yield return "Make the setting tools and check their angles.";
            if (bare.Length > 0) yield return $"No setting tool holds {string.Join(", ", bare)}: set by straightedge, protractor and clamps, or on the original.";
            yield return $"Clamp the pieces {(tooled.Length > 0 ? "to the tools" : "at the angles listed")}; tack in the order listed: ends of all seams, then middles, then between.";
            yield return "Look at every angle and at the diagonals; correct while only tacks hold.";
            yield return "Weld the runs in the order listed, each back towards the one before; let it grow hand-warm between runs.";
        }
        if (plugs) yield return "Punch the plug holes, clean both faces to bright metal, clamp hard next to each hole, weld from the middle of the hole outwards, every second one first.";
        yield return "Let it cool in the clamps, dress, look for pinholes, protect the metal inside and out.";
    }

    /// <summary>All pieces in their places.</summary>
    static Body Whole(FaceModel model, SplitChoice choice)
    {
        var (facets, rims) = (ImmutableArray.CreateBuilder<Facet>(), ImmutableArray.CreateBuilder<Rim>());
        foreach (var piece in choice.Pieces)
        {
            var place = PlaceOf(model, piece);
            var body = FoldedBody.Of(piece.Tree);
            facets.AddRange(body.Facets.Select(f => new Facet([.. f.Loops.Select(l => l.Select(place.Map).ToImmutableArray())])));
            rims.AddRange(body.Rims.Select(r => r with { Centre = place.Map(r.Centre), Normal = place.Turn(r.Normal) }));
        }
        return new(facets.ToImmutable(), rims.ToImmutable());
    }

    /// <summary>Where a piece's own frame, that of its root face at mid-thickness, lies in the pressing.</summary>
    internal static Motion3 PlaceOf(FaceModel model, FoldedPiece piece)
    {
        var root = model.Faces.First(f => f.Name == piece.Tree.Faces[0].Id).Frame;
        var t = model.Pressing.Thickness;
        var below = model.Pressing.PointsOn switch { PointsOn.Upper => t / 2, PointsOn.Lower => -t / 2, _ => 0 };
        return root with { Origin = root.Origin - root.Z * below };
    }

    static string Deg(double angle) => (angle * 180 / Math.PI).ToString("0.00", CultureInfo.InvariantCulture);

    static string N(double mm) => mm.ToString("0.#", CultureInfo.InvariantCulture);
}
