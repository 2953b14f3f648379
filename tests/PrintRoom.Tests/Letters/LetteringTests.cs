using CsCheck;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests.Letters;

public class LetteringTests
{
    const string Wanted =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;!?'\"()[]{}/\\|-_+=<>*#%&@$£€^~`" +
        "⌀°±×÷µΩ½¼¾⅛⅜⅝⅞⅓⅔′″–—·…‘’“”«»éèêëüùûúöòôóäàâáßçñãõĞğşŞİıåÅøØæÆœŁłžŽšŠčČőűęą≤≥≈√→←↑↓∠⟂∥²³₁₂Δσα";

    static TextMark Text(string text, double height = 10) => new(Vec2.Zero, text, height, Layers.Text);

    [Fact, Truth(Grade.CommonPractice, "the characters that drawings in European languages use")]
    public void Every_character_a_drawing_needs_is_there() => Assert.Empty(Lettering.Missing(Wanted));

    [Fact, Truth(Grade.Property, "every glyph of the alphabet")]
    public void Each_letter_draws_something_inside_its_own_box()
    {
        foreach (var rune in Lettering.Known)
        {
            var letter = Assert.Single(Lettering.Line(rune.ToString()));
            if (char.IsWhiteSpace((char)rune.Value)) continue;
            var points = Lettering.Strokes(Text(rune.ToString())).SelectMany(s => s).ToList();
            Assert.True(points.Count > 1, $"{rune} draws nothing");
            Assert.All(points, p => Assert.True(p.X >= -2.0 && p.X <= letter.Glyph.Width + 2.1, $"{rune} reaches {p.X} beside a width of {letter.Glyph.Width}"));
            Assert.All(points, p => Assert.True(p.Y is >= -4 and <= 14, $"{rune} reaches {p.Y}"));
        }
    }

    [Fact, Truth(Grade.FromMemory, "ISO 3098 type B: small letters 7/10 of the capital height, tails 3/10, pen 1/10")]
    public void Proportions_are_those_of_type_B_lettering()
    {
        Assert.Equal(0.1, Lettering.Pen);
        Assert.Equal((0, 10), Reach("H"));
        Assert.Equal((0, 7), Reach("x"));
        Assert.Equal((-3, 7), Reach("p"));

        static (double, double) Reach(string text)
        {
            var y = Lettering.Strokes(Text(text)).SelectMany(s => s).Select(p => p.Y).ToList();
            return (y.Min(), y.Max());
        }
    }

    [Fact, Truth(Grade.Property, "nothing is left out silently")]
    public void A_character_we_lack_draws_a_box_and_is_named()
    {
        (string Lacking, string Named)[] cases = [("漢", "漢"), ("🔧", "🔧"), ("\n", "\n"), ("\uD800", "\uFFFD"), ("\u0301", "\u0301")];
        foreach (var (lacking, named) in cases)
        {
            Assert.Equal([named], Lettering.Missing(lacking + "M8"));
            var box = Lettering.Bounds(Text(lacking))!.Value;
            Assert.Equal((6, 11), (box.Width, box.Height));
        }
    }

    [Theory, InlineData("é", "e\u0301"), InlineData("ğ", "g\u0306"), InlineData("Ş", "S\u0327"), InlineData("ï", "i\u0308"), InlineData("Å", "A\u030A")]
    [Truth(Grade.Published, "Unicode Standard, canonical equivalence of composed letters and combining accents")]
    public void A_combining_accent_makes_the_same_letter(string composed, string combining) =>
        Assert.Equal(Lettering.Strokes(Text(composed)).SelectMany(s => s), Lettering.Strokes(Text(combining)).SelectMany(s => s));

    [Fact, Truth(Grade.Property, "one letter either way")]
    public void Figures_about_a_fraction_slash_are_built_up()
    {
        Assert.Equal(Lettering.Width("½", 10), Lettering.Width("1⁄2", 10), 9);
        Assert.Equal(["3", " ", "5⁄16", "″"], Lettering.Line("3 5⁄16″").Select(p => p.Stands));
        Assert.Equal(["⁄", "8"], Lettering.Line("⁄8").Select(p => p.Stands));
    }

    [Theory, InlineData(Anchor.Left, 0), InlineData(Anchor.Middle, -0.5), InlineData(Anchor.Right, -1)]
    [Truth(Grade.Property, "the anchor's meaning")]
    public void Text_hangs_from_its_anchor(Anchor anchor, double part)
    {
        var strokes = Lettering.Strokes(Text("HIH") with { Anchor = anchor }).SelectMany(s => s).ToList();
        var width = Lettering.Width("HIH", 10);
        Assert.Equal(part * width, strokes.Min(p => p.X), 9);
        Assert.Equal((part + 1) * width, strokes.Max(p => p.X), 9);
    }

    [Fact, Truth(Grade.Property, "turning the text turns its strokes")]
    public void Turned_text_is_the_same_text_turned() =>
        Gen.Select(Gen.Double[-7, 7], Gen.Double[-500, 500], Gen.Double[1, 20]).Sample((turn, x, height) =>
        {
            var text = Text("⌀12.7 Qg", height) with { At = new(x, -x) };
            var plain = Lettering.Strokes(text).SelectMany(s => s).Select(p => text.At + (p - text.At).Turned(turn));
            var turned = Lettering.Strokes(text with { Turn = turn }).SelectMany(s => s);
            Assert.All(plain.Zip(turned), p => Assert.True(p.First.DistanceTo(p.Second) < 1e-9));
        }, iter: 50);

    [Fact, Truth(Grade.Property, "any string at all")]
    public void No_text_breaks_the_pen() =>
        Gen.String.Sample(text =>
        {
            var box = Lettering.Bounds(Text(text));
            Assert.True(box is null || double.IsFinite(box.Value.Width + box.Value.Height));
            Assert.Equal(text.Length, Lettering.Line(text).Sum(p => p.Stands.Length));
        });
}
