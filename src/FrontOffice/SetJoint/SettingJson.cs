using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.SetJoint;

/// <summary>Reads a setting tool from the JSON a person can type (docs/guide/setting.md).</summary>
static class SettingJson
{
    public static Parsed<SettingRequest> Read(string json) => TypedJson.Read(json, "setting", Setting);

    static SettingRequest Setting(JsonField f) =>
        f["kind"].Word<Func<JsonField, SettingRequest>>(("angle tool", Angle), ("sine", Sine), ("jig", Jig), ("form tool", Form))(f);

    static AngleToolWanted Angle(JsonField f)
    {
        f.Only("kind", "title", "angle", "plus_minus", "leg", "width", "relief", "hole", "fit");
        // A stated ± is kept by 19 readings in 20.
        var std = f.Has("plus_minus") ? f["plus_minus"].Angle() / 2 : 0;
        return new(new(f.Text("title", "Setting tool"), f["angle"].Angle(), std, Or(f, "leg", 60), Or(f, "width", 40), Or(f, "relief", 4), f.Has("hole") ? Hole(f["hole"]) : null), Fit(f));
    }

    static double Or(JsonField f, string key, double otherwise) => f.Has(key) ? f[key].Positive() : otherwise;

    static string Fit(JsonField f) => f.Text("fit", Pins.Usual);

    static PinHole Hole(JsonField f)
    {
        f.Only("name", "diameter", "from_apex", "along");
        return new(f.Text("name"), f["diameter"].Positive(), f["from_apex"].Positive(), f["along"].Positive());
    }

    static SineWanted Sine(JsonField f)
    {
        f.Only("kind", "title", "angle", "bar", "set", "grade", "wear");
        return new(f.Text("title", "Sine bar"), f["angle"].Angle(), Or(f, "bar", 100), SlipSets.Of(f.Text("set", "m88")).Value, f.Text("grade", "1"), f.Has("wear") ? f["wear"].Length() : 0);
    }

    static JigWanted Jig(JsonField f)
    {
        f.Only("kind", "title", "holes", "both_hands", "fit");
        return new(f.Text("title", "Drill jig"), f.List("holes", JigHole), f.Has("both_hands") && f["both_hands"].Flag(), Fit(f));
    }

    static JigHole JigHole(JsonField f)
    {
        f.Only("name", "at", "diameter", "locates");
        var (x, y) = f["at"].Pair();
        return new(f.Text("name"), new(x, y), f["diameter"].Positive(), f.Has("locates") && f["locates"].Flag());
    }

    /// <summary>Either the tool's own radius and angle, or what is wanted of a material, from which spring-back is taken off.</summary>
    static FormToolWanted Form(JsonField f)
    {
        f.Only("kind", "title", "tool_radius", "tool_angle", "wanted_radius", "wanted_angle", "thickness", "material", "flange", "length", "hole", "fit");
        var (title, flange, length, hole) = (f.Text("title", "Form tool"), f["flange"].Positive(), f["length"].Positive(), f.Has("hole") ? Hole(f["hole"]) : null);
        var own = f.Has("tool_radius") || f.Has("tool_angle");
        if (own && new[] { "wanted_radius", "wanted_angle" }.FirstOrDefault(f.Has) is { } too) throw f[too].Wrong("give tool_radius and tool_angle, or wanted_radius and wanted_angle, not both");
        if (own) return new(new(title, f["tool_radius"].Positive(), f["tool_angle"].Angle(), flange, length, hole), Fit(f));
        var material = Materials.Find(f.Text("material", "DC01")) ?? throw f["material"].Wrong($"write one of {string.Join("; ", Materials.All.Select(m => m.Name))}");
        var overbend = Overbend.Of(new(f["wanted_radius"].Positive(), f["wanted_angle"].Angle(), f["thickness"].Positive(), length), material).Value;
        return new(new(title, overbend.Radius.Value, overbend.Angle.Value, flange, length, hole), Fit(f)) { Overbend = overbend };
    }
}
