using System.Text;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>Shapes that are cut, folded, hammered and welded: each kind's typed text made into its kit.</summary>
static class Shapes
{
    public static ShapeKind Rail { get; } = new("rail", "Rail", "A Z, C, top hat or L section along a length, given at stations; holes and nuts on any face.",
        [.. Read("rail-kickup", "rail-chassis")],
        (text, wish, _) => FoldRail.FoldRail.Run(new(FoldRail.FoldRail.Read(Bytes(text)).Value, wish.Metal) { Method = wish.Bend }).Kit);

    public static ShapeKind Transition { get; } = new("transition", "Cone, transition or tube", "Cones, square to round, segmented bends, tube to tube and tube to plate, laid flat.",
        [.. Read("transition-funnel", "transition-hopper", "transition-duct", "transition-elbow", "transition-cowl", "tube-saddle", "tube-plate", "tube-mitre")],
        (text, _, _) => DevelopTransition.DevelopTransition.Run(DevelopTransition.DevelopTransition.Read(Bytes(text)).Value).Value.Kit);

    public static ShapeKind Bead { get; } = new("bead", "Beads, flanged holes and edges", "A panel with beads, flanged holes, wired or hemmed edges: its blank, formers and stiffness.",
        [.. Read("bead-floor", "bead-bulkhead")],
        (text, _, _) => RaiseBead.RaiseBead.Run(RaiseBead.RaiseBead.Read(Bytes(text)).Value).Value.Made.Kit);

    public static ShapeKind Split { get; } = new("split", "A pressing split up", "A pressing by its faces: what to fold, what to weld, setting angles, tools and order.",
        [.. Read("split-bracket")],
        (text, wish, stop) => SplitPressing.SplitPressing.Run(new(SplitPressing.SplitPressing.Read(Bytes(text)).Value) { Method = wish.Bend }, stop: stop).Value.Kits[0])
    { Long = true };

    public static ShapeKind Setting { get; } = new("setting", "Setting tool", "Angle blocks, slips under a sine bar, drill jigs and form tools.",
        [.. Read("setting-tool", "setting-sine", "setting-jig", "setting-form")],
        (text, _, _) => SetJoint.SetJoint.Run(SetJoint.SetJoint.Read(Bytes(text)).Value).Value.Kit);

    internal static IEnumerable<ShapeExample> Read(params string[] files) => files.Select(ShapeExample.Of);

    internal static ReadOnlySpan<byte> Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
