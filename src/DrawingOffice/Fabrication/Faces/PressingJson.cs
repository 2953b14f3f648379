using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>Reads a pressing from the JSON a person can type (docs/guide/split.md). A ± is kept by 19 readings in 20: two standard uncertainties.</summary>
public static class PressingJson
{
    public static Parsed<Pressing> Read(string json) => TypedJson.Read(json, "pressing", Pressing);

    static Pressing Pressing(JsonField f)
    {
        f.Only("title", "thickness", "inside_radius", "points_on", "flat_within", "plus_minus", "points", "faces", "joints", "spots", "covariance");
        var std = f.Has("plus_minus") ? Half(f["plus_minus"].Length()) : Vec3.Zero;
        var made = new Pressing(f.Text("title", "Pressing"), f["thickness"].Positive(), f.List("points", p => Point(p, std)), f.List("faces", Face))
        {
            PointsOn = f.Has("points_on") ? f["points_on"].Word(("upper", PointsOn.Upper), ("middle", PointsOn.Middle), ("lower", PointsOn.Lower)) : PointsOn.Middle,
            Wishes = f.Has("joints") ? f.List("joints", Joint) : [],
            Spots = f.Has("spots") ? f.List("spots", Spots) : [],
            Covariance = f.Has("covariance") ? [.. f.List("covariance", row => row.Lengths()).SelectMany(r => r)] : [],
        };
        if (f.Has("inside_radius")) made = made with { InsideRadius = f["inside_radius"].Length() };
        return f.Has("flat_within") ? made with { FlatWithin = f["flat_within"].Length() } : made;
    }

    static Vec3 Half(double plusMinus) => new(plusMinus / 2, plusMinus / 2, plusMinus / 2);

    static PressingPoint Point(JsonField f, Vec3 std)
    {
        f.Only("name", "at", "plus_minus");
        return new(f.Text("name"), At(f["at"]), f.Has("plus_minus") ? Half(f["plus_minus"].Length()) : std);
    }

    static Vec3 At(JsonField f) => f.Lengths() is [var x, var y, var z] ? new(x, y, z) : throw f.Wrong("write x, y and z between [ and ]");

    static ImmutableArray<string> Ring(JsonField f) => [.. f.Text("ring").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];

    static PressingFace Face(JsonField f)
    {
        f.Only("name", "ring", "holes", "slots", "cut_outs");
        return new(f.Text("name"), Ring(f))
        {
            Holes = f.Has("holes") ? f.List("holes", Hole) : [],
            Slots = f.Has("slots") ? f.List("slots", Slot) : [],
            CutOuts = f.Has("cut_outs") ? f.List("cut_outs", CutOut) : [],
        };
    }

    static PressingHole Hole(JsonField f)
    {
        f.Only("name", "at", "diameter");
        return new(f.Text("name"), At(f["at"]), f["diameter"].Positive());
    }

    static PressingSlot Slot(JsonField f)
    {
        f.Only("name", "from", "to", "width");
        return new(f.Text("name"), At(f["from"]), At(f["to"]), f["width"].Positive());
    }

    static ImmutableArray<string> CutOut(JsonField f)
    {
        f.Only("ring");
        return Ring(f);
    }

    static Wish Joint(JsonField f)
    {
        f.Only("first", "second", "wish", "inside_radius");
        var kind = f.Has("wish") ? f["wish"].Word(("fold", JointWish.FoldOnly), ("weld", JointWish.WeldOnly), ("one piece", JointWish.OnePiece), ("free", JointWish.Free)) : JointWish.Free;
        return new(f.Text("first"), f.Text("second"), kind) { InsideRadius = f.Has("inside_radius") ? f["inside_radius"].Length() : null };
    }

    static SpotRow Spots(JsonField f)
    {
        f.Only("name", "face", "onto", "thinner", "count", "row");
        return new(f.Text("name"), f.Text("face"), f.Text("onto"), f["thinner"].Positive(), f["count"].Whole(), f["row"].Positive());
    }
}
