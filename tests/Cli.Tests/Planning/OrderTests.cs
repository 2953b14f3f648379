using System.Text;
using System.Text.Json;
using WitnessMark.Maths;

namespace WitnessMark.Tests.Cli.Planning;

public class OrderTests
{
    [Theory]
    [InlineData(1, 12, 1)]
    [InlineData(2, 30, 4)]
    [InlineData(3, 60, 5)]
    [Truth(Grade.Property, "the file's own rows are checked slot by slot here, apart from the engine: no start before an end that it waits for, no resource overdrawn")]
    public void Starts_are_by_the_numbers_of_the_file_and_can_be_worked(ulong seed, int jobs, int resources)
    {
        var (text, rows, capacities) = Written(new Chance(seed), jobs, resources);
        using var place = new Place();
        var told = Told.By("order", place.Write("made.sm", text), "--seconds", "0.4", "--json");
        Assert.Equal((0, ""), (told.Code, told.Error));
        var root = JsonDocument.Parse(told.Out).RootElement;
        Assert.Equal(["makespan", "starts"], root.EnumerateObject().Select(p => p.Name));
        var starts = root.GetProperty("starts").EnumerateObject().ToDictionary(p => int.Parse(p.Name), p => p.Value.GetInt32());
        Assert.Equal(Enumerable.Range(1, jobs), starts.Keys.Order());
        Assert.Equal(rows.Max(r => starts[r.Job] + r.Duration), root.GetProperty("makespan").GetInt32());
        foreach (var row in rows)
            Assert.All(row.Successors, s => Assert.True(starts[s] >= starts[row.Job] + row.Duration));
        for (var slot = 0; slot < root.GetProperty("makespan").GetInt32(); slot++)
            for (var r = 0; r < resources; r++)
                Assert.True(rows.Where(row => starts[row.Job] <= slot && slot < starts[row.Job] + row.Duration).Sum(row => row.Needs[r]) <= capacities[r]);
    }

    [Theory]
    [InlineData("order none.sm --seconds 1,5", "--seconds: \"1,5\"", "with a point")]
    [InlineData("next --db none.db --hours 3,5", "--hours: \"3,5\"", "with a point")]
    [InlineData("forecast none.json --futures 99999999999", "99999999999", "give a whole number")]
    [Truth(Grade.CommonPractice, "half of Europe types a decimal comma: 1,5 is never 15")]
    public void A_number_typed_otherwise_is_refused_by_what_was_typed(string line, string value, string wanted)
    {
        var told = Told.By(line.Split(' '));
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Contains(value, told.Error);
        Assert.Contains(wanted, told.Error);
        Assert.DoesNotContain("System.", told.Error);
    }

    [Fact, Truth(Grade.Property, "three jobs of 2, 3 and 4 slots on one bench take 9, and none can take less")]
    public void In_words_it_says_whether_it_could_be_shorter()
    {
        using var place = new Place();
        var file = place.Write("bench.sm", Text([new(1, 2, [1], []), new(2, 3, [1], []), new(3, 4, [1], [])], [1]));
        Assert.StartsWith("makespan 9: none can be shorter", Told.By("order", file, "--seconds", "5").Out);
        Assert.StartsWith("makespan 9: none can be shorter", Told.By("order", file, "--seconds", "5", "--own").Out);
    }

    [Theory]
    [InlineData("--seconds 0", "--seconds")]
    [InlineData("--seconds -1", "--seconds")]
    [InlineData("--seconds 1e9", "--seconds")]
    [InlineData("--seconds NaN", "--seconds")]
    [InlineData("--seed x", "--seed")]
    [Truth(Grade.Property, "senseless wishes are refused in one sentence with exit code 2")]
    public void Senseless_wishes_are_refused(string wish, string named)
    {
        using var place = new Place();
        var told = Told.By(["order", place.Write("one.sm", Text([new(1, 2, [1], [])], [1])), .. wish.Split(' ')]);
        Refused(told, named);
    }

    [Fact, Truth(Grade.Property, "a bad file is refused in one sentence with exit code 2 and nothing is written")]
    public void Bad_files_are_refused()
    {
        using var place = new Place();
        Refused(Told.By("order", place.At("none.sm"), "--json"), "none.sm");
        Refused(Told.By("order", place.Write("empty.sm", ""), "--json"), "PRECEDENCE RELATIONS");
        Refused(Told.By("order", place.Write("ring.sm", Text([new(1, 2, [1], [2]), new(2, 2, [1], [1])], [1])), "--json"), "ring");
        Refused(Told.By("order", place.Write("much.sm", Text([new(1, 2, [2], [])], [1])), "--json"), "need of job 1");
    }

    static void Refused(Told told, string named)
    {
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Contains(named, told.Error);
        Assert.Single(told.Error.TrimEnd('\n').Split('\n'));
    }

    sealed record Row(int Job, int Duration, int[] Needs, int[] Successors);

    static (string Text, Row[] Rows, int[] Capacities) Written(Chance chance, int jobs, int resources)
    {
        int[] capacities = [.. Enumerable.Range(0, resources).Select(_ => 3 + chance.Below(5))];
        Row[] rows = [.. Enumerable.Range(1, jobs).Select(job => new Row(job, chance.Below(10), [.. capacities.Select(c => chance.Below(c + 1))],
            [.. Enumerable.Range(job + 1, jobs - job).Where(_ => chance.Uniform() < 0.1)]))];
        return (Text(rows, capacities), rows, capacities);
    }

    static string Text(Row[] rows, int[] capacities)
    {
        var text = new StringBuilder("PRECEDENCE RELATIONS:\njobnr. #modes #successors successors\n");
        foreach (var r in rows) text.Append($"{r.Job} 1 {r.Successors.Length} {string.Join(' ', r.Successors)}\n");
        text.Append("REQUESTS/DURATIONS:\njobnr. mode duration needs\n");
        foreach (var r in rows) text.Append($"{r.Job} 1 {r.Duration} {string.Join(' ', r.Needs)}\n");
        return text.Append($"RESOURCEAVAILABILITIES:\n{string.Join(' ', capacities.Select((_, at) => $"R {at + 1}"))}\n{string.Join(' ', capacities)}\n").ToString();
    }
}
