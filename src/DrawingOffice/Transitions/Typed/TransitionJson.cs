using WitnessMark.DrawingOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A cone, transition, elbow, saddle or mitre from the JSON a person can type (docs/guide/transition.md).</summary>
public static class TransitionJson
{
    public static Parsed<Asked> Read(string json) => TypedJson.Read(json, "shape", Shape);

    static readonly string[] Shared = ["kind", "title", "thickness", "sizes", "neutral", "error", "seam"];

    static Asked Shape(JsonField f)
    {
        var (title, thickness) = (f.Text("title", "Shape"), f["thickness"].Positive());
        var asked = f["kind"].Word<Func<Asked>>(
            ("cone", () => Cone(f, title, thickness)), ("transition", () => Transition(f, title, thickness)), ("elbow", () => Elbow(f, title, thickness)),
            ("saddle", () => Saddle(f, title, thickness)), ("mitre", () => Mitre(f, title, thickness)))();
        return asked with
        {
            Sizes = f.Has("sizes") ? f["sizes"].Word(("inside", Surface.Inside), ("mean", Surface.Mean), ("outside", Surface.Outside)) : asked.Sizes,
            Neutral = f.Has("neutral") ? f["neutral"].Number() : asked.Neutral,
            Error = f.Has("error") ? f["error"].Positive() : asked.Error,
            Seam = f.Has("seam") ? Seam(f["seam"]) : asked.Seam,
        };
    }

    static void Only(JsonField f, params ReadOnlySpan<string> own) => f.Only([.. Shared, .. own]);

    static AskedCone Cone(JsonField f, string title, double thickness)
    {
        Only(f, "base", "top", "height", "offset");
        var (x, y) = f.Has("offset") ? f["offset"].Pair() : (0, 0);
        return new(title, thickness, f["base"].Positive(), f["top"].Length(), f["height"].Positive(), new(x, y));
    }

    static AskedTransition Transition(JsonField f, string title, double thickness)
    {
        Only(f, "first", "second");
        return new(title, thickness, Ends.Read(f["first"]), Ends.Read(f["second"]));
    }

    static AskedElbow Elbow(JsonField f, string title, double thickness)
    {
        Only(f, "diameter", "radius", "angle", "segments", "tail");
        return new(title, thickness, f["diameter"].Positive(), f["radius"].Positive(), f["angle"].Angle(),
            f.Has("segments") ? f["segments"].Whole() : null, f.Has("tail") ? f["tail"].Length() : 0);
    }

    static AskedSaddle Saddle(JsonField f, string title, double thickness)
    {
        Only(f, "diameter", "length", "main", "angle", "offset", "touching", "through", "of_sheet", "paper");
        var main = f["main"];
        main.Only("diameter", "wall");
        return new(title, thickness, f["diameter"].Positive(), f["length"].Positive(),
            new(main.Has("diameter") ? main["diameter"].Positive() / 2 : null, main["wall"].Positive()),
            f.Has("angle") ? f["angle"].Angle() : Math.PI / 2, f.Has("offset") ? f["offset"].Length() : 0,
            f.Has("touching") ? f["touching"].Word(("first", Touching.First), ("inside", Touching.Inside), ("outside", Touching.Outside)) : Touching.First,
            f.Has("through") && f["through"].Flag())
        {
            Sizes = Surface.Outside,
            OfSheet = f.Has("of_sheet") && f["of_sheet"].Flag(),
            Wrapping = Paper(f),
        };
    }

    static AskedMitre Mitre(JsonField f, string title, double thickness)
    {
        Only(f, "diameter", "length", "angle", "of_sheet", "paper");
        return new(title, thickness, f["diameter"].Positive(), f["length"].Positive(), f["angle"].Angle())
        {
            Sizes = Surface.Outside,
            OfSheet = f.Has("of_sheet") && f["of_sheet"].Flag(),
            Wrapping = Paper(f),
        };
    }

    static Wrapping Paper(JsonField f)
    {
        var usual = Wrapping.Usual;
        if (!f.Has("paper")) return usual;
        var p = f["paper"];
        p.Only("thickness", "tab", "stations");
        return new(p.Has("thickness") ? p["thickness"].Length() : usual.Paper, p.Has("tab") ? p["tab"].Length() : usual.Tab, p.Has("stations") ? p["stations"].Whole() : usual.Stations);
    }

    static SeamChoice Seam(JsonField f)
    {
        f.Only("place", "angle", "lap", "pieces");
        var place = f.Has("angle") ? SeamPlace.Angle : f.Has("place") ? f["place"].Word(("flat", SeamPlace.Flat), ("corner", SeamPlace.Corner)) : SeamPlace.Flat;
        if (f.Has("angle") && f.Has("place")) throw f.Wrong("give a place or an angle, not both");
        return new(place, f.Has("angle") ? f["angle"].Angle() : 0, f.Has("lap") ? f["lap"].Length() : 0, f.Has("pieces") ? f["pieces"].Whole() : 1);
    }
}

/// <summary>An end as it is typed: its form, where its middle stands, how it is tilted and turned.</summary>
static class Ends
{
    public static End Read(JsonField f)
    {
        f.Only("shape", "diameter", "width", "height", "radius", "corners", "at", "tilt", "turn");
        var form = f["shape"].Word<Func<EndForm>>(
            ("circle", () => new RoundForm(f["diameter"].Positive())),
            ("ellipse", () => new OvalForm(f["width"].Positive(), f["height"].Positive())),
            ("rectangle", () => new BoxForm(f["width"].Positive(), f["height"].Positive(), f.Has("radius") ? f["radius"].Length() : 0)),
            ("square", () => new BoxForm(f["width"].Positive(), f["width"].Positive(), f.Has("radius") ? f["radius"].Length() : 0)),
            ("polygon", () => new PolygonForm(f.List("corners", c => c.Pair() is var (x, y) ? new Vec2(x, y) : default))))();
        return new(form, Frame(f));
    }

    /// <summary>First turned in its own plane, then tilted about the x axis, then about the y axis, then moved.</summary>
    static Motion3 Frame(JsonField f)
    {
        var turn = f.Has("turn") ? f["turn"].Angle() : 0;
        var (tiltX, tiltY) = (0.0, 0.0);
        if (f.Has("tilt"))
        {
            var tilts = f.List("tilt", t => t.Angle());
            if (tilts.Length != 2) throw f["tilt"].Wrong("write two angles between [ and ], about x and about y");
            (tiltX, tiltY) = (tilts[0], tilts[1]);
        }
        var at = Vec3.Zero;
        if (f.Has("at"))
        {
            var place = f["at"].Lengths();
            if (place.Length != 3) throw f["at"].Wrong("write three lengths between [ and ]: x, y and height");
            at = new(place[0], place[1], place[2]);
        }
        var turned = Motion3.About(Vec3.Zero, new(0, 0, 1), turn);
        var tilted = Motion3.About(Vec3.Zero, new(0, 1, 0), tiltY).After(Motion3.About(Vec3.Zero, new(1, 0, 0), tiltX).After(turned));
        return Motion3.Shift(at).After(tilted);
    }
}
