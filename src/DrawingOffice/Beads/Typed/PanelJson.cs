using WitnessMark.DrawingOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>Reads a panel from the JSON a person can type (docs/guide/bead.md).</summary>
public static class PanelJson
{
    public static Parsed<Panel> Read(string json) => TypedJson.Read(json, "panel", Panel);

    static Panel Panel(JsonField f)
    {
        f.Only("title", "material", "thickness", "width", "length", "beads", "flanged_holes", "edges", "clearance");
        var panel = new Panel(f.Text("title", ""), f.Text("material", "DC01"), f["thickness"].Positive(), f["width"].Positive(), f["length"].Positive())
        {
            Holes = f.Has("flanged_holes") ? f.List("flanged_holes", Hole) : [],
            Edges = f.Has("edges") ? f.List("edges", Edge) : [],
        };
        if (f.Has("beads")) panel = panel with { Beads = Row(f["beads"], panel) };
        if (panel.Holes.GroupBy(h => h.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new RefusedException(Refusal.Of("panel, flanged_holes", twice.Key, "give each hole a name of its own"));
        return f.Has("clearance") ? panel with { Clearance = f["clearance"].Number() } : panel;
    }

    static BeadRow Row(JsonField f, Panel panel)
    {
        f.Only("kind", "depth", "width", "length", "edge_radius", "crown_radius", "top", "run_out", "count", "pitch", "middle");
        var kind = f["kind"].Word(("round", BeadKind.Round), ("v", BeadKind.Vee), ("flat", BeadKind.Flat), ("joggle", BeadKind.Joggle));
        if (kind == BeadKind.Round && f.Has("crown_radius")) throw f["crown_radius"].Wrong("a round bead's crown follows from its width and depth; leave it out");
        if (kind != BeadKind.Flat && f.Has("top")) throw f["top"].Wrong("only a flat bead has a top; leave it out");
        double Or(string key, double otherwise) => f.Has(key) ? f[key].Length() : otherwise;
        var bead = new Bead(kind, f["depth"].Positive(), f["width"].Positive(), Or("length", panel.Length), Or("edge_radius", panel.Thickness),
            kind == BeadKind.Round ? 0 : Or("crown_radius", panel.Thickness), kind == BeadKind.Flat ? f["top"].Positive() : 0, Or("run_out", 0));
        var count = f.Has("count") ? f["count"].Whole() : 1;
        return new(bead, count, count > 1 ? f["pitch"].Positive() : 0, Or("middle", panel.Width / 2));
    }

    static FlangedHole Hole(JsonField f)
    {
        f.Only("name", "at", "inside_diameter", "height", "radius");
        var (x, y) = f["at"].Pair();
        return new(f.Text("name"), new(x, y), f["inside_diameter"].Positive(), f["height"].Positive(), f["radius"].Length());
    }

    static Edging Edge(JsonField f)
    {
        f.Only("side", "wire", "hem", "inside_radius", "folds");
        var side = f["side"].Word(("left", PanelSide.Left), ("right", PanelSide.Right), ("bottom", PanelSide.Bottom), ("top", PanelSide.Top));
        if (f.Has("wire") == f.Has("hem")) throw f.Wrong("give the diameter of a wire, or the width of a hem");
        if (f.Has("wire") && (f.Has("inside_radius") || f.Has("folds"))) throw f.Wrong("inside_radius and folds belong to a hem");
        return f.Has("wire") ? new(side, f["wire"].Positive())
            : new(side, null, f["hem"].Positive(), f.Has("inside_radius") ? f["inside_radius"].Length() : 0, f.Has("folds") ? f["folds"].Whole() : 1);
    }
}
