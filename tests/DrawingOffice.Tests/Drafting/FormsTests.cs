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
}
