using System.CommandLine;
using WitnessMark.FrontOffice.ReturnLoan;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Loans;

namespace WitnessMark.Cli.Stores;

/// <summary><c>wmark loan</c></summary>
static class LoanCommand
{
    public static Command Build(Desk desk) => new("loan", "Before a borrowed sample goes back: what is still open, and everything measured in one file.")
    {
        Ready(desk),
        Leave(desk),
        Pack(desk),
    };

    static Command Ready(Desk desk)
    {
        var (which, json) = (new LoanOptions(), Common.Json());
        return Common.Command("ready", "Says of every borrowed sample whether it may go back, and if not, what to do first.",
            "wmark loan ready --db van.db --sample 'headlamp bracket'", [.. which.All, json], async (parsed, stop) =>
            {
                var told = (await which.Open(parsed, stop)).Select(l => (l, ReturnLoan.Run(l.Request, stop).Standing)).ToList();
                if (parsed.GetValue(json)) desk.WriteJson(new { Loans = told.Select(t => Told(t.l, t.Standing)) });
                else foreach (var (lent, standing) in told) Show(desk, lent, standing);
            });
    }

    static Command Leave(Desk desk)
    {
        var (which, json) = (new LoanOptions(), Common.Json());
        var point = new Option<int>("--point") { Description = "Its number on the list of wmark loan ready.", Required = true };
        var because = new Option<string>("--because") { Description = "Why it may go back without it.", DefaultValueFactory = _ => "" };
        var open = new Option<bool>("--open") { Description = "Take that back: the point is open again." };
        return Common.Command("leave", "Marks an open point as not needed, with the reason, or opens it again.",
            "wmark loan leave --db van.db --sample 'headlamp bracket' --point 2 --because 'the hole is ours, not theirs'", [.. which.All, point, because, open, json], async (parsed, stop) =>
            {
                var lent = await which.One(parsed, stop);
                var points = ReturnLoan.Run(lent.Request, stop).Standing.Points;
                var number = parsed.GetRequiredValue(point);
                if (number < 1 || number > points.Length) throw new RefusedException(Refusal.Of("--point", $"{number}", points.IsEmpty ? "nothing is on the list" : $"give a number from 1 to {points.Length}"));
                await Keep(lent, points[number - 1], parsed.GetRequiredValue(because), parsed.GetValue(open), desk.Clock, stop);
                var again = await which.One(parsed, stop);
                var standing = ReturnLoan.Run(again.Request, stop).Standing;
                if (parsed.GetValue(json)) desk.WriteJson(Told(again, standing));
                else Show(desk, again, standing);
            });
    }

    static async Task Keep(Lent lent, OpenPoint point, string because, bool open, TimeProvider clock, CancellationToken stop)
    {
        var vehicle = lent.Tree.Vehicle.Row.Id;
        var kept = (await lent.Room.Desk.NotNeeded.Of(vehicle, stop)).FirstOrDefault(r => r.Row.SampleId == lent.Request.Sample.Id && r.Row.Point == point.Key);
        if (open && kept.Row is null) throw new RefusedException(Refusal.Of("--open", point.Words, "it is open already"));
        var row = open ? kept.Row with { Dropped = true }
            : new NotNeeded(kept.Row?.Id ?? Guid.CreateVersion7(clock.GetUtcNow()), vehicle, lent.Request.Sample.Id, point.Key, point.Words, because, Dropped: false);
        if (await lent.Room.Desk.NotNeeded.Save(row, kept.Version, stop) is { Clash: true } clash) throw new RefusedException(new(clash.Words));
    }

    static Command Pack(Desk desk)
    {
        var (which, folder, json) = (new LoanOptions(), Common.Folder(), Common.Json());
        return Common.Command("pack", "Writes one zip with everything measured of a borrowed sample, for its lender. Photographs lose the place and the camera's numbers.",
            "wmark loan pack --db van.db --sample 'headlamp bracket' --out loan", [.. which.All, folder, json], async (parsed, stop) =>
            {
                var lent = await which.One(parsed, stop);
                var papers = LoanPapers.Of(lent.Request, stop);
                var pictures = new List<Picture>();
                foreach (var id in lent.Request.Photographs)
                    if (await lent.Room.Pictures.Read(id, stop) is { } picture) pictures.Add(picture);
                var zip = LenderZip.Of(lent.Request, papers, pictures);
                var files = Common.WriteAll(parsed.GetRequiredValue(folder), [zip]);
                if (parsed.GetValue(json)) desk.WriteJson(new { Files = files, papers.Standing.Ready, papers.Standing.Words, papers.Lacks });
                else
                {
                    desk.Out.WriteLine(papers.Standing.Words);
                    foreach (var lack in papers.Lacks) desk.Out.WriteLine($"! {lack}");
                    foreach (var file in files) desk.Out.WriteLine(file);
                }
            });
    }

    static object Told(Lent lent, LoanStanding standing) => new
    {
        Sample = lent.Request.Sample.Title,
        lent.Request.Part,
        lent.Request.Sample.Loan!.Lender,
        lent.Request.Sample.Loan.Due,
        standing.Ready,
        standing.Words,
        Points = standing.Points.Select((p, i) => new { Number = i + 1, Kind = p.Kind.ToString().ToLowerInvariant(), p.Key, p.Words, p.Do, p.NotNeeded }),
        standing.Cautions,
    };

    static void Show(Desk desk, Lent lent, LoanStanding standing)
    {
        var today = DateOnly.FromDateTime(desk.Clock.GetLocalNow().DateTime);
        var loan = lent.Request.Sample.Loan!;
        desk.Out.WriteLine($"{lent.Request.Sample.Title} ({lent.Request.Part}), due {loan.Due:yyyy-MM-dd}{(loan.DaysLeft(today) < 0 ? $", {-loan.DaysLeft(today)} days late" : "")}");
        desk.Out.WriteLine(standing.Words);
        foreach (var (p, number) in standing.Points.Select((p, i) => (p, i + 1)))
            desk.Out.WriteLine(p.NotNeeded is { } because ? $"  {number}. (not needed: {because}) {p.Words}" : $"  {number}. {p.Words} {p.Do}");
        foreach (var caution in standing.Cautions) desk.Out.WriteLine(caution);
    }
}
