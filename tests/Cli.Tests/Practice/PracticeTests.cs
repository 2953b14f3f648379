namespace WitnessMark.Tests.Cli.Practice;

public class PracticeTests
{
    [Fact]
    public void A_sheet_and_its_list_are_written_and_an_unread_list_is_refused_with_the_reason()
    {
        var folder = Directory.CreateTempSubdirectory("wm-practice-").FullName;
        try
        {
            var (pdf, csv) = (Path.Combine(folder, "17.pdf"), Path.Combine(folder, "17.csv"));
            var told = Told.By("practice", "sheet", "--number", "17", "--paper", "letter", "--out", pdf, "--list", csv);
            Assert.Equal((0, ""), (told.Code, told.Error));
            Assert.StartsWith("%PDF-", File.ReadAllText(pdf), StringComparison.Ordinal);
            Assert.Contains("sheet,17", File.ReadAllText(csv), StringComparison.Ordinal);
            var compared = Told.By("practice", "compare", csv);
            Assert.Equal(2, compared.Code);
            Assert.Contains("take the rest of the list first", compared.Error, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("0", "A4", "sheet number")]
    [InlineData("17", "A5", "paper")]
    public void A_sheet_that_there_is_not_is_refused(string number, string paper, string field)
    {
        var told = Told.By("practice", "sheet", "--number", number, "--paper", paper);
        Assert.Equal(2, told.Code);
        Assert.StartsWith($"{field}: \"", told.Error, StringComparison.Ordinal);
    }
}
