using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Order;

/// <summary>
/// Reads the single-mode files of PSPLIB (R. Kolisch, A. Sprecher, European Journal of Operational Research 96 (1996)
/// 205-216): renewable resources only; jobs are numbered from 1 and stand at their number less one.
/// </summary>
public static class Psplib
{
    const int LargestNumber = 1_000_000;

    /// <summary>A line with something on it, and the number that it has in the file.</summary>
    readonly record struct Line(int Number, string Text)
    {
        public string[] Words => Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
    }

    public static Parsed<Project> Read(string text)
    {
        try
        {
            return Project(Lines(text));
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    static List<Line> Lines(string text)
    {
        var lines = new List<Line>();
        var number = 0;
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            number++;
            var bare = line.Trim('\uFEFF').Trim();
            if (!bare.IsEmpty && bare.Trim("*-").Length > 0) lines.Add(new(number, bare.ToString()));
        }
        return lines;
    }

    static Parsed<Project> Project(List<Line> lines)
    {
        var successors = Rows(lines, "PRECEDENCE RELATIONS");
        var requests = Rows(lines, "REQUESTS/DURATIONS");
        var available = Rows(lines, "RESOURCEAVAILABILITIES");
        OnlyRenewable(lines);
        var capacities = Numbers(available[0], "availability");
        var named = NamesAbove(lines, available[0]);
        if (named > 0 && named != capacities.Length) throw Bad(available[0], "availability", available[0].Text, $"{named} resources are named, so as many numbers are wanted");
        if (successors.Count > Order.Project.MostActivities) throw Bad(successors[0], "jobs", $"{successors.Count}", $"there may be at most {Order.Project.MostActivities}");
        if (requests.Count != successors.Count) throw Bad(requests[^1], "requests", $"{requests.Count} jobs", $"the precedence relations list {successors.Count} jobs");
        if (Stated(lines) is { } stated && stated.Jobs != successors.Count) throw Bad(stated.At, "jobs", $"{stated.Jobs}", $"the precedence relations list {successors.Count} jobs");
        var activities = ImmutableArray.CreateBuilder<Activity>(requests.Count);
        for (var i = 0; i < requests.Count; i++) activities.Add(Activity(i + 1, successors[i], requests[i], successors.Count, capacities));
        return Order.Project.Of(activities.MoveToImmutable(), [.. capacities]);
    }

    static Activity Activity(int job, Line relation, Line request, int count, int[] capacities)
    {
        var after = Numbers(relation, "precedence relations");
        var needs = Numbers(request, "requests");
        if (after.Length < 3) throw Bad(relation, "precedence relations", relation.Text, "a job, its modes, how many successors and which are wanted");
        if (after[0] != job) throw Bad(relation, "job", $"{after[0]}", $"jobs stand in order and the next is {job}");
        if (after[1] != 1) throw Bad(relation, $"modes of job {job}", $"{after[1]}", "only files with one mode are read");
        if (after[2] != after.Length - 3) throw Bad(relation, $"successors of job {job}", $"{after[2]}", $"{after.Length - 3} are listed");
        foreach (var s in after[3..])
            if (s < 1 || s > count) throw Bad(relation, $"successor of job {job}", $"{s}", $"it must be a job from 1 to {count}");
        if (needs.Length != 3 + capacities.Length) throw Bad(request, "requests", request.Text, $"a job, its mode, its duration and {capacities.Length} needs are wanted");
        if (needs[0] != job) throw Bad(request, "job", $"{needs[0]}", $"jobs stand in order and the next is {job}");
        if (needs[1] != 1) throw Bad(request, $"mode of job {job}", $"{needs[1]}", "only files with one mode are read");
        if (needs[2] < 0) throw Bad(request, $"duration of job {job}", $"{needs[2]}", "it must be 0 or more");
        for (var r = 0; r < capacities.Length; r++)
            if (needs[3 + r] < 0 || needs[3 + r] > capacities[r]) throw Bad(request, $"need of job {job} for resource {r + 1}", $"{needs[3 + r]}", $"it must be 0 to {capacities[r]}, which is all there is");
        return new(needs[2], [.. needs[3..]], [.. after[3..].Select(s => s - 1)]);
    }

    /// <summary>The lines of figures under a heading, up to the next line that begins otherwise once figures have begun.</summary>
    static List<Line> Rows(List<Line> lines, string heading)
    {
        var at = lines.FindIndex(l => l.Text.StartsWith(heading, StringComparison.OrdinalIgnoreCase));
        if (at < 0) throw new RefusedException(Refusal.Of(heading, null, "the file must have this section", lines.Count == 0 ? 1 : lines[^1].Number));
        var rows = new List<Line>();
        foreach (var line in lines.Skip(at + 1))
        {
            if (char.IsAsciiDigit(line.Text[0]) || line.Text[0] is '-' or '+' or '.') rows.Add(line);
            else if (rows.Count > 0 || line.Text.Contains('/') || line.Text.StartsWith("RESOURCEA", StringComparison.OrdinalIgnoreCase)) break;
        }
        return rows.Count > 0 ? rows : throw Bad(lines[at], heading, null, "lines of numbers must follow");
    }

    /// <summary>How many resources the line over the figures names; each name holds one letter.</summary>
    static int NamesAbove(List<Line> lines, Line figures)
    {
        var above = lines[lines.IndexOf(figures) - 1].Text;
        return above.StartsWith("RESOURCEA", StringComparison.OrdinalIgnoreCase) ? 0 : above.Count(char.IsAsciiLetter);
    }

    static void OnlyRenewable(List<Line> lines)
    {
        foreach (var line in lines)
            if (line.Text.StartsWith("- nonrenewable", StringComparison.OrdinalIgnoreCase) || line.Text.StartsWith("- doubly", StringComparison.OrdinalIgnoreCase))
            {
                var value = line.Words.FirstOrDefault(w => int.TryParse(w, out _));
                if (value is not (null or "0")) throw Bad(line, "resources", line.Text, "only renewable resources are planned, so the count here must be 0");
            }
    }

    static (int Jobs, Line At)? Stated(List<Line> lines)
    {
        var at = lines.FindIndex(l => l.Text.StartsWith("jobs (", StringComparison.OrdinalIgnoreCase));
        return at >= 0 && int.TryParse(lines[at].Words[^1], out var jobs) ? (jobs, lines[at]) : null;
    }

    static int[] Numbers(Line line, string field) => [.. line.Words.Select(w =>
        int.TryParse(w, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var n) && Math.Abs((long)n) <= LargestNumber
            ? n : throw Bad(line, field, w, $"a whole number up to {LargestNumber} is wanted"))];

    static RefusedException Bad(Line line, string field, string? value, string wanted) => new(Refusal.Of(field, value, wanted, line.Number));
}
