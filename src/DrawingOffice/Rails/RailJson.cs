using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.DrawingOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Reads a rail from the JSON a person can type (docs/guide/rail.md). A size that a station leaves out is that of the station before.</summary>
public static class RailJson
{
    public static Parsed<Rail> Read(string json) => TypedJson.Read(json, "rail", Rail);

    static Rail Rail(JsonField f)
    {
        f.Only("title", "kind", "hand", "thickness", "inside_radius", "lower_angle", "upper_angle", "lip_angle", "stations", "holes");
        var kind = f["kind"].Word(("Z", RailKind.Z), ("C", RailKind.C), ("top hat", RailKind.TopHat), ("L", RailKind.L));
        // Thinner is foil, which no folder bends; the law itself holds down to nothing.
        if (f["thickness"].Positive() < 0.05) throw f["thickness"].Wrong("give the sheet's thickness in mm, 0.05 or more");
        double Angle(string key) => f.Has(key) ? f[key].Angle() : Math.PI / 2;
        return new(f.Text("title", "Rail"), kind, f["thickness"].Positive(), f["inside_radius"].Positive(), Stations(f, kind))
        {
            Hand = f.Has("hand") ? f["hand"].Word(("LH", Hand.Left), ("RH", Hand.Right), ("both", Hand.Both)) : Hand.Left,
            LowerAngle = Angle("lower_angle"),
            UpperAngle = Angle("upper_angle"),
            LipAngle = Angle("lip_angle"),
            Holes = f.Has("holes") ? f.List("holes", Hole) : [],
        };
    }

    static ImmutableArray<Station> Stations(JsonField f, RailKind kind)
    {
        Station? before = null;
        return f.List("stations", s => (before = Station(s, before, kind)));
    }

    static Station Station(JsonField f, Station? before, RailKind kind)
    {
        f.Only("at", "web", "lower", "upper", "lower_lip", "upper_lip", "plan", "level", "turn", "ease");
        double Size(string key, double? otherwise) => f.Has(key) || otherwise is null ? f[key].Length() : otherwise.Value;
        var lower = Size("lower", before?.Lower);
        var lip = Size("lower_lip", before?.LowerLip ?? 0);
        return new(f["at"].Length(), Size("web", before?.Web), lower, Size("upper", before?.Upper ?? (kind == RailKind.L ? 0 : lower)))
        {
            LowerLip = lip,
            UpperLip = Size("upper_lip", before?.UpperLip ?? (kind == RailKind.L ? 0 : lip)),
            Plan = Size("plan", before?.Plan ?? 0),
            Level = Size("level", before?.Level ?? 0),
            Turn = f.Has("turn") ? f["turn"].Angle() : before?.Turn ?? 0,
            // An arc belongs to its own station.
            Ease = Size("ease", 0),
        };
    }

    static RailHole Hole(JsonField f)
    {
        f.Only("name", "face", "at", "from", "across", "diameter", "width", "length", "turn", "corners", "nut");
        var id = f.Text("name");
        var face = f["face"].Word(("web", RailFace.Web), ("lower flange", RailFace.LowerFlange), ("upper flange", RailFace.UpperFlange), ("lower lip", RailFace.LowerLip), ("upper lip", RailFace.UpperLip));
        var from = f.Has("from") ? f["from"].Word(("edge", AcrossFrom.Edge), ("far edge", AcrossFrom.FarEdge), ("middle", AcrossFrom.Middle)) : AcrossFrom.Edge;
        return new(id, face, f["at"].Length(), from, f["across"].Length(), Shape(f, id), f.Has("nut") ? f.Text("nut") : null);
    }

    static Opening Shape(JsonField f, string id)
    {
        if ((f.Has("diameter") ? 1 : 0) + (f.Has("width") ? 1 : 0) + (f.Has("corners") ? 1 : 0) != 1)
            throw f.Wrong("give a diameter for a round hole, width and length for a slot, or corners for a cut-out");
        if (f.Has("diameter")) return new RoundHole(id, Vec2.Zero, f["diameter"].Positive());
        if (f.Has("corners")) return CutOut(f, id);
        var (width, length) = (f["width"].Positive(), f["length"].Positive());
        if (length <= width) throw f["length"].Wrong("a slot's length is over its round ends and more than its width");
        return new Slot(id, Vec2.Zero, width, length, f.Has("turn") ? f["turn"].Angle() : 0);
    }

    static CutOut CutOut(JsonField f, string id)
    {
        var corners = f.List("corners", c => c.Lengths() is { Length: 2 or 3 } n && (n.Length == 2 || n[2] >= 0) ? n : throw c.Wrong("write [x, y] or [x, y, radius], from the middle of the cut-out"));
        if (corners.Length < 3) throw f["corners"].Wrong("give at least three corners");
        var loop = Fillet.Round([.. corners.Select(c => new Vec2(c[0], c[1]))], [.. corners.Select(c => c.Length == 3 ? c[2] : 0)]);
        if (!loop.Ok) throw new RefusedException(loop.Refusal!.In($"hole {id}"));
        if (!(loop.Value.SignedArea > 0) || Crossings.Of(loop.Value.Flatten(0.01).AsSpan(), 1).Length > 0) throw f["corners"].Wrong("go round anticlockwise without crossing");
        return new(id, loop.Value);
    }
}
