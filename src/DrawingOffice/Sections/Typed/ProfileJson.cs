using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>A section as typed: its shape, its material by name, and what it carries where that is known.</summary>
public sealed record TypedProfile(Profile Profile, string Material, Loads? Loads);

/// <summary>Reads a cross-section from the JSON a person can type (docs/guide/section.md).</summary>
public static class ProfileJson
{
    /// <summary>More strips or holes than any rail has.</summary>
    const int Most = 100;

    public static Parsed<TypedProfile> Read(string json) => TypedJson.Read(json, "section", Section);

    static TypedProfile Section(JsonField f)
    {
        f.Only("title", "material", "strips", "joins", "solid", "holes", "carries");
        var profile = f.Has("solid") == f.Has("strips") ? throw f.Wrong("give either strips of sheet or a solid outline")
            : f.Has("solid") ? new Profile(f.Text("title", ""), [], []) { Solid = Outline(f, "solid"), Holes = f.Has("holes") ? f.List("holes", Hole) : [] }
            : new Profile(f.Text("title", ""), f.List("strips", Strip), f.Has("joins") ? f.List("joins", Join) : []);
        if (profile.Holes.Length > Most) throw f["holes"].Wrong($"give at most {Most}");
        if (profile.Strips.Length > Most) throw f["strips"].Wrong($"give at most {Most}");
        if (profile.Strips.GroupBy(s => s.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new RefusedException(Refusal.Of("section, strips", twice.Key, "give each strip a name of its own"));
        return new(profile, f.Text("material", "DC01"), f.Has("carries") ? Carries(f["carries"]) : null);
    }

    static Strip Strip(JsonField f)
    {
        f.Only("name", "thickness", "line", "inside_radius", "sheet_lies", "closed");
        var (name, thickness, closed) = (f.Text("name"), f["thickness"].Positive(), f.Has("closed") && f["closed"].Flag());
        var points = f.List("line", Point);
        if (points.Length < (closed ? 3 : 2)) throw f["line"].Wrong(closed ? "give at least three points" : "give at least two points");
        for (var i = 0; i < points.Length; i++)
            if (points[i].DistanceTo(points[(i + 1) % points.Length]) <= Profile.Same && (closed || i + 1 < points.Length))
                throw f["line"].Wrong($"point {i + 1} and the next are one");
        var radius = f.Has("inside_radius") ? f["inside_radius"].Length() : 0;
        if (radius < 0) throw f["inside_radius"].Wrong("give 0 or more");
        // The line typed may be either face of the sheet; its middle lies half a thickness off.
        var off = f.Has("sheet_lies") ? f["sheet_lies"].Word(("middle", 0.0), ("left", thickness / 2), ("right", -thickness / 2)) : 0;
        var sharp = new Chain([.. points.Select(p => new Corner(p)), .. closed ? [new Corner(points[0])] : ImmutableArray<Corner>.Empty]);
        if (!closed && Enumerable.Range(1, points.Length - 2).Any(i => (points[i] - points[i - 1]).Unit.Dot((points[i + 1] - points[i]).Unit) < -0.999))
            throw f["line"].Wrong("a strip cannot turn straight back on itself; give the fold a short side");
        var middle = sharp.Off(off, closed).Corners.Select(c => c.At).Take(points.Length).ToArray();
        var round = Chain.Round(middle, [.. middle.Select(_ => radius > 0 ? radius + thickness / 2 : 0)], closed);
        return new(name, thickness, round.Refusal is { } refusal ? throw new RefusedException(refusal.In($"strip {name}")) : round.Value, closed);
    }

    static Join Join(JsonField f)
    {
        f.Only("strip", "to", "at", "plug_hole", "pitch");
        if (f.Has("pitch") && !f.Has("plug_hole")) throw f["pitch"].Wrong("give plug_hole too; a seam welded through has no pitch");
        return new(f.Text("strip"), f.Text("to"), Point(f["at"]), f.Has("plug_hole") ? f["plug_hole"].Positive() : null, f.Has("pitch") ? f["pitch"].Positive() : null);
    }

    static Loads Carries(JsonField f)
    {
        f.Only("shear_up", "shear_sideways", "torque");
        double Of(string key, double scale) => f.Has(key) ? scale * f[key].Number() : 0;
        var loads = new Loads(Of("shear_up", 1), Of("shear_sideways", 1), Of("torque", 1000));
        return loads is { Up: 0, Sideways: 0, Torque: 0 } ? throw f.Wrong("give a shear in N or a torque in N m that is not 0, or leave it out") : loads;
    }

    static Vec2 Point(JsonField f) => f.Pair() is var (x, y) ? new(x, y) : default;

    static Loop Outline(JsonField f, string key)
    {
        var corners = f.List(key, Corner);
        if (corners.Length < 3) throw f[key].Wrong("give at least three corners");
        var round = Fillet.Round([.. corners.Select(c => c.At)], [.. corners.Select(c => c.Radius)]);
        if (round.Refusal is { } refusal) throw new RefusedException(refusal.In(key));
        if (Crossings.Of(round.Value.Flatten(0.01).AsSpan(), 1) is [var at, ..]) throw f[key].Wrong($"it meets itself near {at.At.X:0.#}, {at.At.Y:0.#}; let it run clear of itself");
        return round.Value;
    }

    static (Vec2 At, double Radius) Corner(JsonField f) => f.Lengths() switch
    {
        [var x, var y] => (new(x, y), 0),
        [var x, var y, >= 0 and var r] => (new(x, y), r),
        _ => throw f.Wrong("write [x, y] or [x, y, radius]"),
    };

    static Loop Hole(JsonField f)
    {
        f.Only("at", "diameter", "corners");
        if (f.Has("diameter") == f.Has("corners")) throw f.Wrong("give a place and a diameter, or corners");
        return f.Has("diameter") ? Loop.Circle(Point(f["at"]), f["diameter"].Positive() / 2) : Outline(f, "corners");
    }
}
