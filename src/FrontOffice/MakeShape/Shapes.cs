using System.Globalization;
using System.Text;
using WitnessMark.DrawingOffice.Rails;
using WitnessMark.FrontOffice.FoldRail;
using WitnessMark.FrontOffice.SplitPressing;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>Shapes that are cut, folded, hammered and welded: each kind's typed text made into its kit.</summary>
static class Shapes
{
    public static ShapeKind Rail { get; } = new("rail", "Rail", "A Z, C, top hat or L section along a length, given at stations; holes and nuts on any face.",
        [.. Read("rail-kickup", "rail-chassis")],
        (text, wish, _) => Ways(Folded(text, wish)))
    { Check = (text, wish, stop) => [.. MeshCheck.Of(Folded(text, wish).Made.Form, stop: stop).Select(Said)] };

    public static ShapeKind Transition { get; } = new("transition", "Cone, transition or tube", "Cones, square to round, segmented bends, tube to tube and tube to plate, laid flat.",
        [.. Read("transition-funnel", "transition-hopper", "transition-duct", "transition-elbow", "transition-cowl", "tube-saddle", "tube-plate", "tube-mitre")],
        (text, _, _) => new(DevelopTransition.DevelopTransition.Run(DevelopTransition.DevelopTransition.Read(Bytes(text)).Value).Value.Kit));

    public static ShapeKind Bead { get; } = new("bead", "Beads, flanged holes and edges", "A panel with beads, flanged holes, wired or hemmed edges: its blank, formers and stiffness.",
        [.. Read("bead-floor", "bead-bulkhead")],
        (text, _, _) => new(RaiseBead.RaiseBead.Run(RaiseBead.RaiseBead.Read(Bytes(text)).Value).Value.Made.Kit));

    public static ShapeKind Split { get; } = new("split", "A pressing split up", "A pressing by its faces: what to fold, what to weld, setting angles, tools and order.",
        [.. Read("split-bracket")],
        (text, wish, stop) => Splits(SplitPressing.SplitPressing.Run(new(SplitPressing.SplitPressing.Read(Bytes(text)).Value) { Method = wish.Bend }, stop: stop).Value, wish))
    { Long = true };

    public static ShapeKind Setting { get; } = new("setting", "Setting tool", "Angle blocks, slips under a sine bar, drill jigs and form tools.",
        [.. Read("setting-tool", "setting-sine", "setting-jig", "setting-form")],
        (text, _, _) => new(SetJoint.SetJoint.Run(SetJoint.SetJoint.Read(Bytes(text)).Value).Value.Kit));

    static RailResult Folded(string text, ShapeWish wish) =>
        FoldRail.FoldRail.Run(new(FoldRail.FoldRail.Read(Bytes(text)).Value, wish.Metal) { Method = wish.Bend, Proposal = wish.Choice });

    /// <summary>A flange with fewer ways than the other stays at its last.</summary>
    static ShapeMade Ways(RailResult rail)
    {
        var edges = rail.Made.Ways;
        return new(rail.Kit, [.. Enumerable.Range(0, edges.Max(e => e.Ways.Length)).Select(i => string.Join("; ", edges.Select(e => Said(e, e.Ways[Math.Min(i, e.Ways.Length - 1)]))))]);
    }

    static string Said(EdgeWays edge, Way way) => Write($"{edge.Strain.Edge} {Done(way.Kind)}, {way.Hours:0.0} h{(way.Reachable ? "" : ", not within reach")}");

    static string Done(WayKind kind) => kind switch
    {
        WayKind.Fold => "folded",
        WayKind.Hammer => "hammered over a former",
        WayKind.Notch => "notched and welded",
        _ => "of its own piece",
    };

    static string Said(MeshBound b) => Write(
        $"{char.ToUpperInvariant(b.Face[0])}{b.Face[1..]}: the blank's edge is within {b.Outline:0.000} mm of a fine mesh laid flat; the best flat piece keeps {100 * Math.Max(b.Flat.Stretch, -b.Flat.Shrink):0.000} % of strain{(b.Flat.Settled ? "" : ", and the mesh had not settled")}.");

    static ShapeMade Splits(SplitResult split, ShapeWish wish) => new(
        split.Kits[Math.Min(wish.Choice, split.Kits.Length) - 1],
        [.. split.Answer.Choices.Select(c => Write($"{c.Pieces.Length} {(c.Pieces.Length == 1 ? "piece" : "pieces")}, {c.Folded.Length} folds, {c.WeldLength:0} mm of weld, about {c.Work:0} minutes"))]);

    static string Write(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);

    internal static IEnumerable<ShapeExample> Read(params string[] files) => files.Select(ShapeExample.Of);

    internal static ReadOnlySpan<byte> Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
