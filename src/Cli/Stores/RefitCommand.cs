using System.CommandLine;
using WitnessMark.Cli.Planning;
using WitnessMark.FrontOffice.PutTogether;
using WitnessMark.Maths;

namespace WitnessMark.Cli.Stores;

/// <summary><c>wmark refit</c></summary>
static class RefitCommand
{
    public static Command Build(Desk desk)
    {
        var file = new Argument<string?>("FILE") { Description = "A typed list: part,after,because.", Arity = ArgumentArity.ZeroOrOne };
        var db = new Option<string?>("--db") { Description = "The records' SQLite file, in place of a list." };
        var vehicle = new Option<string?>("--vehicle") { Description = "Name of the vehicle, where there is more than one." };
        var json = Common.Json();
        return Common.Command("refit", "The order in which parts go back on: stages, what can go on now, what is not here, and rings of waiting in words.",
            "wmark refit came-off.csv", [file, db, vehicle, json], async (parsed, stop) =>
            {
                var result = (parsed.GetValue(file), parsed.GetValue(db)) switch
                {
                    ({ } path, null) => PutTogether.Read(Desk.Read(path)),
                    (null, { } records) => await Kept(records, parsed.GetValue(vehicle), desk.Clock, stop),
                    _ => throw new RefusedException(Refusal.Of("list or records", null, "give a file, or --db for what the records say, and not both")),
                };
                if (parsed.GetValue(json)) desk.WriteJson(Told(result));
                else Show(desk.Out, result);
            });
    }

    static async Task<PutTogetherResult> Kept(string path, string? vehicle, TimeProvider clock, CancellationToken stop)
    {
        var plan = await PlanOptions.Open(path, vehicle, clock, stop);
        return await PutTogether.Open(plan.Tree, plan.Room.Desk, stop);
    }

    static object Told(PutTogetherResult r)
    {
        var names = r.Plan.Steps.ToDictionary(s => s.Part.Id, s => s.Part.Name);
        return new
        {
            Steps = r.Plan.Steps.Select(s => new
            {
                Part = s.Part.Name,
                Stage = s.Stage + 1,
                Done = r.Done.Contains(s.Part.Id),
                WaitsFor = s.Waits.Select(w => new { Part = names[w.First], w.Because }),
            }),
            Ready = r.Ready.Select(s => s.Part.Name),
            Ring = r.Plan.LoopWords,
            HeldUp = r.Plan.HeldUp.Select(p => p.Name),
            r.Missing,
            PutTogetherResult.Cautions,
        };
    }

    static void Show(TextWriter to, PutTogetherResult r)
    {
        if (r.Plan.LoopWords is { } loop) to.WriteLine($"! {loop}");
        if (!r.Plan.HeldUp.IsEmpty) to.WriteLine($"Held up by it: {string.Join(", ", r.Plan.HeldUp.Select(p => p.Name))}.");
        foreach (var stage in r.Plan.Steps.GroupBy(s => s.Stage).OrderBy(g => g.Key))
            to.WriteLine($"{stage.Key + 1}. {string.Join(", ", stage.Select(s => r.Done.Contains(s.Part.Id) ? $"{s.Part.Name} (on)" : s.Part.Name))}");
        if (r.Plan.Steps.IsEmpty && r.Plan.HeldUp.IsEmpty) to.WriteLine("Nothing is said to have come off.");
        if (r.Ready is { IsEmpty: false } ready) to.WriteLine($"Can go on now: {string.Join(", ", ready.Select(s => s.Part.Name))}.");
        foreach (var missing in r.Missing) to.WriteLine($"! {char.ToUpperInvariant(missing[0])}{missing[1..]}.");
        foreach (var caution in PutTogetherResult.Cautions) to.WriteLine(caution);
    }
}
