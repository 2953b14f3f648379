using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>Reads a bracket from the JSON a person can type (docs/guide/blank.md), by the rules of <see cref="TypedJson"/>.</summary>
public static class BracketJson
{
    public static Parsed<Bracket> Read(string json) => TypedJson.Read(json, "bracket", Bracket);

    static Bracket Bracket(JsonField f)
    {
        f.Only("title", "thickness", "measured_to", "faces", "bends");
        return new(f.Text("title", ""), f["thickness"].Length(), Measured(f), f.List("faces", Face), f.Has("bends") ? f.List("bends", Bend) : []);
    }

    static MeasuredTo Measured(JsonField f) => f.Text("measured_to", "outside") switch
    {
        "outside" => MeasuredTo.Outside,
        "inside" => MeasuredTo.Inside,
        "tangent" => MeasuredTo.Tangent,
        var other => throw new RefusedException(Refusal.Of("measured_to", other, "write outside, inside or tangent")),
    };

    static WrittenFace Face(JsonField f)
    {
        f.Only("name", "size", "corners", "holes", "cut_outs");
        if (f.Has("size") == f.Has("corners")) throw f.Wrong("give either size (width, height) or corners");
        var corners = f.Has("size") ? Rectangle(f["size"]) : f.List("corners", Corner);
        return new(f.Text("name"), corners, f.Has("holes") ? f.List("holes", Hole) : [],
            f.Has("cut_outs") ? f.List("cut_outs", c => new WrittenCutOut(c.Text("name"), c.List("corners", Corner))) : []);
    }

    static ImmutableArray<WrittenCorner> Rectangle(JsonField size)
    {
        var (w, h) = size.Pair();
        if (!(w > 0 && h > 0)) throw size.Wrong("width and height must be more than 0");
        return [.. Loop.Rectangle(w, h).Corners.Select(c => new WrittenCorner(c.At))];
    }

    static WrittenCorner Corner(JsonField f)
    {
        var n = f.Lengths();
        if (n.Length is not (2 or 3) || n.Length == 3 && n[2] < 0) throw f.Wrong("write [x, y] or [x, y, radius]");
        return new(new(n[0], n[1]), n.Length == 3 ? n[2] : 0);
    }

    static Opening Hole(JsonField f)
    {
        f.Only("name", "at", "diameter", "width", "length", "turn_degrees");
        var (x, y) = f["at"].Pair();
        if (f.Has("diameter") == f.Has("width")) throw f.Wrong("give a diameter for a round hole, or width and length for a slot");
        if (f.Has("diameter")) return new RoundHole(f.Text("name"), new(x, y), f["diameter"].Positive());
        var (width, length) = (f["width"].Positive(), f["length"].Positive());
        if (length <= width) throw f["length"].Wrong("a slot's length is over its round ends and more than its width");
        return new Slot(f.Text("name"), new(x, y), width, length, f.Has("turn_degrees") ? f["turn_degrees"].Number() * Math.PI / 180 : 0);
    }

    static WrittenBend Bend(JsonField f)
    {
        f.Only("parent", "child", "side", "from", "to", "angle_degrees", "inside_radius");
        return new(f.Text("parent"), f.Text("child"), f["side"].Whole(), f.Has("from") ? f["from"].Length() : null,
            f.Has("to") ? f["to"].Length() : null, f["angle_degrees"].Number(), f["inside_radius"].Length());
    }
}
