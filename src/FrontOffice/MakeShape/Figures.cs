using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sections;
using WitnessMark.DrawingOffice.Typed;
using WitnessMark.FrontOffice.CompareSections;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>Kinds of which nothing is cut: figures to work by, in tables.</summary>
static class Figures
{
    public static ShapeKind Section { get; } = new("section", "Section, original and copy", "Area, stiffness and strength of a cross-section, and whether a copy is no weaker.",
        [Pair("section-rail-pressed", "section-rail-two-piece"), .. Shapes.Read("section-rail-pressed")], (text, _, _) => new(Compared(text)));

    public static ShapeKind SpringBack { get; } = new("spring-back", "Spring-back and force", "What to set for one bend: former radius, over-bend, force, and whether the shop's folder does it.",
        [new("One bend", """
            {
              "title": "Bend over a bar",
              "radius": 20,
              "angle_degrees": 90,
              "thickness": 1.2,
              "length": 300,
              "grain": "across"
            }
            """)], (text, wish, _) => new(Bent(text, wish)));

    static ShapeExample Pair(string original, string copy) =>
        new("Original and copy", $"{{ \"original\": {ShapeExample.Of(original).Text.Trim()},\n  \"copy\": {ShapeExample.Of(copy).Text.Trim()} }}\n");

    /// <summary>Either one section, or two under "original" and "copy".</summary>
    static Kit Compared(string text)
    {
        var whole = ShapeNode.Read(text).Value;
        TypedProfile Read(string part) => CompareSections.CompareSections.Read(Shapes.Bytes(part)).Value;
        var result = whole["original"] is { } original && whole["copy"] is { } copy
            ? CompareSections.CompareSections.Run(Read(original.In(text)), Read(copy.In(text))).Value
            : CompareSections.CompareSections.Run(Read(text)).Value;
        return new(result.Section.Made.Profile.Title, [])
        {
            Listings = [Properties(result), .. result.Copy is null ? ImmutableArray<Listing>.Empty : [Against(result)], Joins(result)],
            Steps = result.NoWeaker switch
            {
                true => ["The copy is no weaker than the original in these figures."],
                false => ["The copy is weaker than the original in what is marked, or its joins do not make it one piece."],
                _ => [],
            },
            Cautions = result.Cautions,
        };
    }

    static Listing Properties(SectionsResult result)
    {
        ReckonedSection[] all = result.Copy is { } copy ? [result.Section, copy] : [result.Section];
        ImmutableArray<string> Row(string what, string unit, Func<SectionProperties, double> of) => [what, .. all.Select(s => Say($"{of(s.Made.Properties):0.##} {unit}"))];
        return new("Figures of the section", ["what", .. all.Select(s => s.Made.Profile.Title)],
        [
            Row("area", "mm²", p => p.Area), Row("bends up and down, second moment", "mm⁴", p => p.Ix), Row("bends sideways, second moment", "mm⁴", p => p.Iy),
            Row("up and down, section modulus", "mm³", p => p.Zx), Row("sideways, section modulus", "mm³", p => p.Zy), Row("twisting constant", "mm⁴", p => p.Torsion),
        ]);
    }

    static Listing Against(SectionsResult result) => new("Copy against original", ["what", "original", "copy", "share", ""],
        [.. result.Rows.Select(r => (ImmutableArray<string>)[r.What, Say($"{r.Original:0.###} {r.Unit}"), Say($"{r.Copy:0.###} {r.Unit}"), Say($"{100 * r.Ratio:0} %"), r.MoreIsBetter && !r.NoWorse ? "weaker" : ""])]);

    static Listing Joins(SectionsResult result) => new("Joins of the copy, or of the one section", ["join", "it carries on each mm", "how"],
        [.. (result.Copy ?? result.Section).Joins.Select(j => (ImmutableArray<string>)[$"{j.Join.First} to {j.Join.Second}", Say($"{j.Flow:0.0} N"),
            j.Pitch is { } pitch ? Say($"plugs of {j.Join.Plug:0.#} mm, one every {pitch:0} mm or nearer") : "weld it through"])]);

    static Kit Bent(string text, ShapeWish wish)
    {
        var result = TypedJson.Read(text, "bend", f =>
        {
            f.Only("title", "radius", "angle_degrees", "thickness", "length", "grain", "die", "hot");
            var wanted = new WantedBend(f["radius"].Positive(), f["angle_degrees"].Angle(), f["thickness"].Positive(), f["length"].Positive());
            return (Title: f.Text("title", "Bend"), Set: SetBend.SetBend.Run(new(wanted, wish.Metal)
            {
                Grain = f.Has("grain") ? f["grain"].Word(("across", Grain.Across), ("slanting", Grain.Slanting), ("along", Grain.Along)) : Grain.Across,
                Opening = f.Has("die") ? f["die"].Positive() : null,
                Hot = f.Has("hot") && f["hot"].Flag(),
            }).Value);
        }).Value;
        var set = result.Set;
        return new(result.Title, [])
        {
            Listings = [new("What to set", ["what", "figure", "over the yield this grade may have"],
            [
                ["inside radius of the former", Say($"{set.Radius:0.00} mm"), Say($"{set.Overbend.Radius.Low:0.00} to {set.Overbend.Radius.High:0.00} mm")],
                ["bend to", Degrees(set.Angle), $"{Degrees(set.Overbend.Angle.Low)} to {Degrees(set.Overbend.Angle.High)}"],
                [Say($"force over a V of {set.Opening:0.#} mm"), Say($"{set.Force / 1000:0.0} kN"), ""],
                ["to fold it", Say($"{set.Moment / 1000:0.0} N m"), ""],
                ["as thick as mild steel of", Say($"{set.AsMildSteel:0.##} mm"), ""],
                .. set.LeastRadius is { } least ? [["least inside radius", Say($"{least:0.0} mm"), ""]] : ImmutableArray<ImmutableArray<string>>.Empty,
            ])],
            Cautions = set.Cautions,
        };
    }

    static string Degrees(double radians) => Say($"{radians * 180 / Math.PI:0.0}°");

    static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
