using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.MakeShape;

public class ShapeTests
{
    public static TheoryData<string, int> Examples => [.. ShapeKind.All.SelectMany(k => k.Examples.Select((_, i) => (k.Key, i)))];

    [Theory]
    [MemberData(nameof(Examples))]
    [Truth(Grade.Property, "every example a person may begin with can be made and shown")]
    public void Every_example_is_made(string kind, int example)
    {
        var shown = ShapeShown.Of(new ShapeAsked(kind, ShapeKind.Of(kind).Examples[example].Text));
        Assert.NotEmpty(shown.Title);
        Assert.True(shown.Pictures.Length + shown.Lists.Length > 0);
    }

    const string Typed = """
        {
          "title": "Rail \u2300",
          "thickness": "16 SWG", "both": true,
          "stations": [
            { "name": "a", "at": 0, "web": 90 },
            { "name": "b", "at": 100, "size": [3, 4] }
          ]
        }
        """;

    [Fact]
    [Truth(Grade.Property, "changing one value changes nothing else, byte for byte")]
    public void One_value_is_rewritten_and_all_else_stays()
    {
        var form = ShapeForm.Of(ShapeNode.Read(Typed).Value);
        Assert.Equal(["title", "thickness", "both"], form.Fields.Select(f => f.Label));
        var at = form.Tables[0].Rows[1][1]!;
        Assert.Equal(Typed.Replace("\"at\": 100", "\"at\": 125.5"), at.With(Typed, "125.5"));
        Assert.Equal(Typed.Replace("\"at\": 100", "\"at\": \"4 in\""), at.With(Typed, "4 in"));
        Assert.Equal(Typed.Replace("\"16 SWG\"", "1.5"), form.Fields[1].Value.With(Typed, "1.5"));
        Assert.Equal(Typed.Replace("true", "false"), form.Fields[2].Value.With(Typed, "false"));
        Assert.Equal(Typed.Replace("\"a\"", "\"1\""), form.Tables[0].Rows[0][0]!.With(Typed, "1"));
    }

    [Fact]
    [Truth(Grade.Property, "a figure typed key by key ends as the number, whatever it was on the way")]
    public void A_number_half_typed_does_not_stay_words()
    {
        var text = Typed;
        foreach (var written in new[] { "1", "12", "12.", "12.5" })
            text = ShapeForm.Of(ShapeNode.Read(text).Value).Tables[0].Rows[1][1]!.With(text, written);
        Assert.Contains("\"at\": 12.5", text);
    }

    [Fact]
    [Truth(Grade.Property, "a row once more and then taken out gives the text back")]
    public void Rows_are_added_and_taken_out()
    {
        var list = ShapeNode.Read(Typed).Value["stations"]!;
        var more = list.WithCopy(Typed, 1);
        var again = ShapeNode.Read(more).Value["stations"]!;
        Assert.Equal(3, again.Items.Length);
        Assert.Equal(Typed, again.Without(more, 2));
        Assert.Equal(2, ShapeNode.Read(again.Without(more, 0)).Value["stations"]!.Items.Length);
    }

    [Fact]
    [Truth(Grade.Property, "an empty cell filled in is that row's value")]
    public void An_empty_cell_is_filled_in()
    {
        var table = ShapeForm.Of(ShapeNode.Read(Typed).Value).Tables[0];
        var column = table.Columns.IndexOf("web");
        Assert.Null(table.Rows[1][column]);
        var text = table.With(Typed, 1, column, "85")!;
        Assert.Equal(85, ShapeForm.Of(ShapeNode.Read(text).Value).Tables[0].Rows[1][column]!.Number);
    }

    [Fact]
    [Truth(Grade.Property, "a text that is not whole is refused with its line, an unknown kind by its name")]
    public void What_cannot_be_read_is_said()
    {
        Assert.Contains("line 2", ShapeNode.Read("{\n  \"title\": ").Refusal!.Sentence);
        Assert.Contains("wing", Assert.Throws<RefusedException>(() => ShapeShown.Of(new ShapeAsked("wing", "{}"))).Message);
    }

    [Fact]
    [Truth(Grade.Property, "a laid shape brings its sheets, its card and its files")]
    public void A_typed_shape_is_planned()
    {
        var text = ShapeKind.Of("folded").Examples[0].Text;
        var plan = ShapePlan.Of(new(new("folded", text), "angle", "Q-1", "A4", PlanningOffice.Shop.Usual, 2, false, [], new(2026, 11, 26, 9, 0, 0, TimeSpan.Zero)));
        Assert.Single(plan.Sheets);
        Assert.Equal(2, plan.Card.Quantity);
        Assert.Contains(plan.Files, f => f.File.FileName == "angle-card.pdf");
        Assert.Equal("PK"u8.ToArray(), plan.Zip[..2]);
    }
}
