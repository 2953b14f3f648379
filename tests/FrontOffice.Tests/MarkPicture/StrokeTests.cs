using CsCheck;
using WitnessMark.FrontOffice.MarkPicture;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.MarkPicture;

public class StrokeTests
{
    static readonly Gen<Vec2> Place = Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Select((x, y) => Stroke.Held(new(x, y)));

    static readonly Gen<Stroke> Any = Gen.Select(Gen.Enum<StrokeKind>(), Gen.Enum<Ink>(), Gen.Int[1, 4], Place.Array[2, 2], Gen.String[Gen.Char.AlphaNumeric, 1, 20])
        .Select((kind, ink, weight, places, text) => new Stroke(kind, ink, weight, [.. places], kind == StrokeKind.Words ? text : ""));

    [Fact]
    [Truth(Grade.Property, "what is written is read back the same")]
    public void Strokes_read_back() => Any.Array[0, 20].Sample(strokes =>
        StrokesJson.Write(StrokesJson.Read(StrokesJson.Write(strokes)).Value) == StrokesJson.Write(strokes));

    [Theory]
    [InlineData("[", "send them as the page writes them"), InlineData("""[{"kind":"pen","ink":"red","weight":2,"places":[0.5]}]""", "not pairs")]
    [InlineData("""[{"kind":"pen","ink":"red","weight":9,"places":[0.5,0.5]}]""", "choose 1 to 4"), InlineData("""[{"kind":"pen","ink":"red","weight":2,"places":[0.5,1.5]}]""", "from 0 to 1")]
    [InlineData("""[{"kind":"arrow","ink":"red","weight":2,"places":[0.5,0.5]}]""", "has two"), InlineData("[null]", "number 1")]
    [Truth(Grade.Property, "what cannot be drawn is refused with its number and what would be right")]
    public void What_cannot_be_drawn_is_refused(string text, string words) => Assert.Contains(words, StrokesJson.Read(text).Refusal!.Sentence);

    [Fact]
    [Truth(Grade.Property, "undoing every step and doing it again leads back to where it was")]
    public void Steps_are_taken_back_and_done_again() => Any.Array[1, 12].Sample(strokes =>
    {
        var drawn = strokes.Aggregate(StrokeTrail.From([]), (t, s) => t.Drawn(s));
        var back = strokes.Aggregate(drawn, (t, _) => t.Undone());
        return back.Now.IsEmpty && strokes.Aggregate(back, (t, _) => t.Redone()).Now.SequenceEqual(drawn.Now);
    });

    [Theory]
    [InlineData(Ink.Red), InlineData(Ink.Blue), InlineData(Ink.Green), InlineData(Ink.Black)]
    [Truth(Grade.Published, "W3C WCAG 2.2, relative luminance and contrast ratio (1.4.3: 4.5 to 1)")]
    public void Each_ink_holds_against_its_white_rim(Ink ink)
    {
        var rgb = Convert.FromHexString(StrokeLines.Colour(ink)[1..]).Select(v => v / 255.0).Select(v => v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4)).ToArray();
        Assert.True(1.05 / (0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2] + 0.05) >= 4.5);
    }

    [Fact]
    [Truth(Grade.Property, "a long lingering line keeps its ends and few places; the words tell where it runs")]
    public void A_line_is_told_and_thinned()
    {
        var pen = Stroke.Pen(Ink.Blue, 2, Enumerable.Range(0, 5000).Select(i => new Vec2(i / 5000.0, 0.5)));
        Assert.InRange(pen.Places.Length, 300, 600);
        Assert.Null(pen.Wrong());
        Assert.Equal("Blue line from the left to the right", StrokeWords.Of(pen));
        Assert.Equal("Red arrow from the top left to the middle", StrokeWords.Of(new(StrokeKind.Arrow, Ink.Red, 1, [new(0.1, 0.1), new(0.5, 0.5)])));
    }
}
