using System.CommandLine;
using WitnessMark.Cli.Drawing;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.FrontOffice.FindIntent;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Intent;

/// <summary><c>wmark intent</c></summary>
static class IntentCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A reading sheet (CSV) or a survey in JSON.");
        var (json, title) = (Common.Json(), new TitleOptions());
        var folder = new Option<string?>("--out", "-o") { Description = "Folder for the drawing of the part as meant; no drawing without it.", HelpName = "FOLDER" };
        var refuse = Keys("--refuse", "A pattern that is not to be taken, as the answer names it; may be given again.");
        var force = Keys("--force", "A pattern that is to hold whatever the readings say; may be given again.");
        var origin = new Option<string>("--origin") { Description = "Where the vehicle comes from.", DefaultValueFactory = _ => "unknown" };
        origin.AcceptOnlyFromAmong([.. Origins.All.Select(o => o.Name)]);
        var made = new Option<string>("--made") { Description = "How the part was made: hand (marked out and drilled) or tool (pressed, or drilled through a jig).", DefaultValueFactory = _ => "hand" };
        made.AcceptOnlyFromAmong("hand", "tool");
        var units = DrawCommand.Units();
        return Common.Command("intent", "Finds what the draughtsman meant by a measured part: patterns and round sizes with their odds.",
            "wmark intent demo/samples/dynamo-plate.csv --origin british --out drawings", [file, folder, refuse, force, origin, made, units, .. title.All, json], parsed =>
            {
                var sample = SampleFile.Read(Desk.Read(parsed.GetRequiredValue(file))).Value;
                var measured = MeasureSample.Run(new MeasureRequest(sample) { Advise = false });
                var found = FindIntent.Run(new(sample, measured.Plan)
                {
                    Wish = new()
                    {
                        Refused = [.. parsed.GetValue(refuse) ?? []],
                        Forced = [.. parsed.GetValue(force) ?? []],
                        Prior = Origins.Named(parsed.GetRequiredValue(origin))!,
                        Making = parsed.GetRequiredValue(made) == "tool" ? Making.ByTool : Making.ByHand,
                    },
                });
                if (parsed.GetValue(json)) desk.Out.WriteLine(found.ToJson());
                else Show(desk, found.Intent);
                if (parsed.GetValue(folder) is not { } to) return;
                var now = desk.Clock.GetUtcNow();
                var fields = title.Read(parsed, sample.Title.Length > 0 ? sample.Title : sample.Id, "", "", now);
                var files = Common.WriteAll(to, Drawn(found, fields, DrawCommand.StyleOf(parsed.GetRequiredValue(units))).Files(PrintRoom.Paper.PaperSize.A4, now));
                if (parsed.GetValue(json)) return;
                foreach (var file in files) desk.Out.WriteLine(file);
            });
    }

    /// <summary>What was found is told before, so that a part that cannot be drawn loses nothing of it; the refusal says what it is about.</summary>
    static IntentDrawn Drawn(IntentResult found, TitleFields title, LengthStyle style)
    {
        try
        {
            return FindIntent.Draw(found, title, style);
        }
        catch (RefusedException e)
        {
            throw new RefusedException(e.Refusal.In("no drawing was made"));
        }
    }

    static Option<string[]> Keys(string name, string does) => new(name) { Description = does, HelpName = "PATTERN" };

    static void Show(Desk desk, IntentPlan intent)
    {
        desk.Out.WriteLine(intent.Words);
        foreach (var caution in intent.Cautions) desk.Out.WriteLine($"! {caution}");
        foreach (var standing in intent.Findings.GroupBy(f => f.Standing))
        {
            desk.Out.WriteLine();
            desk.Out.WriteLine(Heading(standing.Key));
            foreach (var f in standing)
            {
                desk.Out.WriteLine($"  {f.Words}");
                desk.Out.WriteLine($"      {Evidence(f)}");
            }
        }
        if (!intent.Undecided.IsEmpty)
        {
            desk.Out.WriteLine();
            desk.Out.WriteLine("Undecided");
            foreach (var u in intent.Undecided) desk.Out.WriteLine($"  {u.Words}");
        }
    }

    static string Evidence(Finding f)
    {
        var moved = f.Moved is { } m ? FormattableString.Invariant($"; moves {m.Feature} by {m.Distance:0.00} mm") : "";
        var odds = f.Odds is { } o ? $", odds {o}" : "";
        return f.Freedom == 0 ? f.Key : FormattableString.Invariant($"{f.Key}: chi-square {f.ChiSquare:0.0} for {f.Freedom}{odds}{moved}");
    }

    static string Heading(Standing standing) => standing switch
    {
        Standing.Accepted => "Found",
        Standing.Forced => "As you asked",
        Standing.Implied => "Follows from these",
        Standing.Refused => "Left out as you asked",
        _ => "Near, but not taken",
    };
}
