using WitnessMark.DrawingOffice.Drafting.Forms;
using WitnessMark.PrintRoom;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

public sealed class FormsTests
{
    static void Sound(IEnumerable<Sheet> sheets)
    {
        foreach (var sheet in sheets)
        {
            Assert.Null(Sheets.Overlap(sheet));
            Assert.Null(Sheets.OffPaper(sheet));
        }
    }

    [Fact]
    public void A_blank_reading_sheet_has_the_columns_of_the_csv_in_their_order()
    {
        var sheets = ReadingSheet.Draw(new());
        Sound(sheets);
        string[] columns = ["kind", "from", "to", "value as written", "instrument", "note"];
        var heads = Sheets.Texts(sheets[^1]).Where(t => columns.Contains(t.Text)).OrderBy(t => t.At.X).Select(t => t.Text);
        Assert.Equal(columns, heads);
    }

    [Fact]
    public void Every_feature_and_reading_given_is_printed_once_over_as_many_sheets_as_it_takes()
    {
        var sheets = ReadingSheet.Draw(new("S-1", "Plate")
        {
            Features = [.. Enumerable.Range(1, 45).Select(i => new FeatureRow($"F{i}", "hole"))],
            Readings = [.. Enumerable.Range(1, 70).Select(i => new ReadingRow("diameter", "H", "", $"{i}.5"))],
            Kinds = ["centre distance", "diameter"],
        });
        Sound(sheets);
        var texts = sheets.SelectMany(Sheets.Texts).Select(t => t.Text).ToList();
        for (var i = 1; i <= 45; i++) Assert.Single(texts, t => t == $"F{i}");
        for (var i = 1; i <= 70; i++) Assert.Single(texts, t => t == $"{i}.5");
    }

    [Fact]
    public void A_job_card_prints_every_step_and_caution_and_adds_the_hours()
    {
        var sheets = JobCard.Draw(new("Remake the tank bracket, left hand", "Tank bracket", "P-7")
        {
            Cautions = ["Cut edges: gloves on.", "Drilling thin sheet: clamp it, never hold it by hand; eye protection."],
            Stock = [new("Sheet, mild steel, 16 SWG", "300 × 200 mm", "1", "£6.50")],
            Steps = [.. Enumerable.Range(1, 60).Select(i => new CardStep($"Step number {i} of the work, told in enough words to need a second line", "tools", 0.25, 0.5, 1, i == 60))],
        });
        Sound(sheets);
        var texts = sheets.SelectMany(Sheets.Texts).Select(t => t.Text).ToList();
        for (var i = 1; i <= 60; i++) Assert.Single(texts, t => t.StartsWith($"Step number {i} of", StringComparison.Ordinal));
        Assert.Single(texts, t => t == "15 / 30 / 60");
        Assert.Contains(sheets[0].Marks.OfType<TextMark>(), t => t.Tone == Tone.Warn && t.Text.Contains("gloves", StringComparison.Ordinal));
        Assert.True(sheets.Length > 1);
    }
}
