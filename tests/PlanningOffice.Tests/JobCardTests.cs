using WitnessMark.PlanningOffice.Print;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests;

public sealed class JobCardTests
{
    static readonly BlankFacts Much = RouteCardTests.Bracket with
    {
        Bends = [new(60, 2, 1), new(100, 2, 3), new(700, 2, 1)],
        Holes = [new(6.5, 4), new(30, 1)],
        Welds = [new(WeldKind.Mig, 40), new(WeldKind.Tig, 20)],
        Hazards = [.. Enum.GetValues<Hazard>()],
    };

    static IReadOnlyList<Sheet> Card => JobCard.Sheets(BlankRoute.Card(Much, Shop.Usual), "Q12-4221", new(2031, 5, 4));

    [Fact]
    [Truth(Grade.Property, "every line of text keeps inside the paper and clear of every other")]
    public void Text_keeps_inside_the_paper_and_apart()
    {
        Assert.True(Card.Count > 1);
        foreach (var sheet in Card)
        {
            var boxes = sheet.Marks.OfType<TextMark>().Select(t => (t.Text, Box: Lettering.Bounds(t)!.Value)).ToList();
            foreach (var ((text, box), i) in boxes.Select((b, i) => (b, i)))
            {
                Assert.True(box.Left >= 20 && box.Right <= 201 && box.Bottom >= 5 && box.Top <= 290, text);
                foreach (var (other, o) in boxes.Skip(i + 1))
                    Assert.False(box.Left < o.Right && o.Left < box.Right && box.Bottom < o.Top && o.Bottom < box.Top, $"\"{text}\" runs into \"{other}\"");
            }
        }
    }

    [Fact]
    [Truth(Grade.Property, "the alphabet has every character the card uses")]
    public void No_character_is_missing() =>
        Assert.All(Card.SelectMany(s => s.Marks).OfType<TextMark>(), t => Assert.Empty(Lettering.Missing(t.Text)));

    [Fact]
    [Truth(Grade.Property, "every step and every caution of the card is on the paper")]
    public void Every_step_and_caution_is_printed()
    {
        var printed = string.Join(' ', Card.SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text));
        var card = BlankRoute.Card(Much, Shop.Usual);
        Assert.All(card.Steps, s => Assert.Contains(s.Title, printed));
        Assert.All(card.Steps.SelectMany(s => s.Cautions).Concat(card.Cautions), c => Assert.Contains(c, printed));
        Assert.All(card.SentOut, s => Assert.Contains(s.SentOut!.Why, printed));
    }
}
