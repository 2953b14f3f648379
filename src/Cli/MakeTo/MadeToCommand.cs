using System.CommandLine;
using WitnessMark.FrontOffice.MakeToSize;

namespace WitnessMark.Cli.MakeTo;

/// <summary><c>wmark made-to</c></summary>
static class MadeToCommand
{
    public static Command Build(Desk desk) => new("made-to", "What worn things were made to, with the odds.")
    {
        SheetCommand(desk),
        SizeCommand(desk),
    };

    static Command SheetCommand(Desk desk)
    {
        var file = Common.File("Rows under the heading item,what,facet,value,instrument,condition,note.");
        var (origin, json) = (Origin(), Common.Json());
        return Common.Command("sheet", "Identifies all items of a sheet together: what one says of the origin counts for all.",
            "wmark made-to sheet demo/samples/stud.csv --origin british", [file, origin, json], parsed =>
            {
                var questions = SizeSheet.Read(Desk.Read(parsed.GetRequiredValue(file))).Value;
                Show(desk, new(questions) { Prior = Origins.Named(parsed.GetRequiredValue(origin))! }, parsed.GetValue(json));
            });
    }

    static Command SizeCommand(Desk desk)
    {
        var what = new Argument<string>("WHAT") { Description = "hole, pin, external thread, internal thread, sheet, hole pitch, radius, length or angle." };
        var value = new Argument<string>("VALUE") { Description = "As read; repeats with ; between." };
        var with = new Option<string>("--with") { Description = "Instrument, or how far off it can be: '± 0.05'.", DefaultValueFactory = _ => "calliper" };
        var condition = new Option<string>("--condition") { Description = "new, light, worn or badly worn.", DefaultValueFactory = _ => "" };
        var pitch = new Option<string?>("--pitch") { Description = "Thread pitch, by pitch gauge or counted: 26 TPI, 10 threads in 12.5 mm." };
        var (origin, json) = (Origin(), Common.Json());
        return Common.Command("size", "Identifies one measured size.", "wmark made-to size 'external thread' 7.88 --pitch '22 TPI' --condition worn",
            [what, value, with, condition, pitch, origin, json], parsed =>
            {
                var (thing, instrument, state) = (parsed.GetRequiredValue(what), parsed.GetRequiredValue(with), parsed.GetRequiredValue(condition));
                List<TypedSize> rows = [new(0, "", thing, "size", parsed.GetRequiredValue(value), instrument, state, "")];
                if (parsed.GetValue(pitch) is { } said)
                    rows.Add(new(0, "", thing, "pitch", said, said.Contains("thread", StringComparison.OrdinalIgnoreCase) ? instrument : "pitch gauge", "", ""));
                Show(desk, new(SizeSheet.Read(rows).Value) { Prior = Origins.Named(parsed.GetRequiredValue(origin))! }, parsed.GetValue(json));
            });
    }

    static Option<string> Origin()
    {
        var origin = new Option<string>("--origin") { Description = "Where the vehicle comes from.", DefaultValueFactory = _ => "unknown" };
        origin.AcceptOnlyFromAmong([.. Origins.All.Select(o => o.Name)]);
        return origin;
    }

    static void Show(Desk desk, MakeToSizeRequest request, bool json)
    {
        var result = MakeToSize.Run(request);
        if (json) desk.WriteJson(MadeToShape.Of(result));
        else MadeToWords.Write(desk.Out, result);
    }
}
