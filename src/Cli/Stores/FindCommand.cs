using System.CommandLine;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.Cli.Stores;

/// <summary><c>wmark parts find</c></summary>
static class FindCommand
{
    public static Command Build(Desk desk)
    {
        var words = new Argument<string[]>("WORDS") { Description = "In any order; slips of spelling, half words and plurals are read too.", Arity = ArgumentArity.OneOrMore };
        var (db, json) = (Kept.Db(), Common.Json());
        var vehicle = new Option<string?>("--vehicle") { Description = "Name of the vehicle; without it all are searched." };
        var most = new Option<int>("--most") { Description = "Parts shown at most.", DefaultValueFactory = _ => 20 };
        return Common.Command("find", "Finds parts by words, best first.", "wmark parts find front sprng LH --db van.db", [words, db, vehicle, most, json], async (parsed, stop) =>
        {
            if (parsed.GetValue(most) is < 1 and var few) throw new RefusedException(Refusal.Of("--most", $"{few}", "give a whole number from 1 up"));
            var trees = await Kept.Vehicles(parsed.GetRequiredValue(db), parsed.GetValue(vehicle), stop);
            var found = PartIndex.Of(trees.SelectMany(t => PartWords.Of(t))).Find(string.Join(' ', parsed.GetRequiredValue(words)), parsed.GetValue(most));
            if (parsed.GetValue(json)) desk.WriteJson(new { Found = found.Select(Told) });
            else Show(desk.Out, found);
        });
    }

    static object Told(Found f) => new
    {
        f.Of.Part.Id,
        f.Of.Part.Name,
        Hand = f.Of.Part.Hand.ToString(),
        f.Of.Part.Quantity,
        f.Of.Part.Reference,
        f.Of.System,
        f.Of.Assembly,
        f.Score,
        Why = f.Words.Select(w => w.Why),
    };

    static void Show(TextWriter to, IReadOnlyList<Found> found)
    {
        if (found.Count == 0) to.WriteLine("no part holds any of these words");
        foreach (var f in found)
        {
            var part = f.Of.Part;
            to.WriteLine($"{part.Name}{(part.Hand == Hand.None ? "" : $" {part.Hand}")}, {part.Quantity} off{(part.Reference.Length > 0 ? $", {part.Reference}" : "")}, {f.Of.System}: {string.Join("; ", f.Words.Select(w => w.Why))}");
        }
    }
}
