using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using WitnessMark.PlanningOffice;
using WitnessMark.Records;
using WitnessMark.Stores;
using WitnessMark.Stores.Notes;
using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Hosting;
using WitnessMark.Web.Pairing;

namespace WitnessMark.Bench;

/// <summary>
/// What the pages read over HTTP, from records that have grown for years: 5,000 parts, 20,000 photographs, 10,000 lines of hours, 2,000 jobs.
/// The alternative in the same run is the plain way to the newest photographs: all of them.
/// </summary>
static class ShedReads
{
    const int Parts = 5000, Pictures = 20_000, Lines = 10_000, Jobs = 2000, Notes = 2000, Rounds = 60;

    static readonly DateTimeOffset Begin = new(2031, 5, 4, 9, 0, 0, TimeSpan.Zero);

    public static async Task Run(string path)
    {
        var vehicle = File.Exists(path) ? (await (await RecordRoom.Open(path)).Vehicles.Vehicles())[0].Row.Id : await Fill(path);
        var records = await RecordRoom.Open(path);
        var tree = (await records.Vehicles.Tree(vehicle))!;
        await using var host = Serve.Build(new(0, records.Path, ServeOptions.UsualLanPort, []), records, LanHouse.None, TimeProvider.System);
        await host.StartAsync();
        var address = host.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        using var http = new HttpClient { BaseAddress = new Uri(address) };
        var desk = $"api/vehicles/{vehicle}/desk";
        (string What, string Path)[] reads =
        [
            ("vehicles", "api/vehicles"), ("tree of 5,000 parts", $"api/vehicles/{vehicle}"),
            ("newest 60 photographs", $"{desk}/PictureTaken/newest?take=60"),
            ("60 photographs from the middle", $"{desk}/PictureTaken/newest?take=60&before={Pictures / 2}"),
            ("photographs of one part", $"{desk}/PictureTaken/newest?take=60&part={tree.Parts[77].Row.Id}"),
            ("newest 60 notes", $"{desk}/Note/newest?take=60"),
            ("10,000 lines of hours", $"api/vehicles/{vehicle}/hours"),
            ("2,000 jobs", $"api/vehicles/{vehicle}/jobs"), ("things given back", $"{desk}/GivenBack"), ("means", $"api/vehicles/{vehicle}/means"),
            ("all 20,000 photographs (the plain way)", $"{desk}/PictureTaken"),
        ];
        foreach (var (what, at) in reads)
        {
            var changed = await Times(http, at, () => records.Desk.Notes.Append([new Note(Guid.NewGuid(), vehicle, null, "one more", Begin, "bench")]));
            var again = await Times(http, at, () => Task.CompletedTask);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-40} after a change {Told(changed)}   again {Told(again)} {changed.Bytes / 1024.0,7:0} kB"));
        }
    }

    /// <param name="before">Done before each read, not timed.</param>
    /// <returns>By the clock, and of the processor for one read, which other work on the machine leaves alone.</returns>
    static async Task<(double[] Ms, double Processor, long Bytes)> Times(HttpClient http, string path, Func<Task> before)
    {
        var bytes = 0L;
        var times = new List<double>();
        var worked = TimeSpan.Zero;
        for (var i = 0; i < Rounds + 5; i++)
        {
            await before();
            var (begun, processor) = (Stopwatch.GetTimestamp(), Environment.CpuUsage.TotalTime);
            var body = await http.GetByteArrayAsync(path);
            if (i < 5) continue;
            times.Add(Stopwatch.GetElapsedTime(begun).TotalMilliseconds);
            worked += Environment.CpuUsage.TotalTime - processor;
            bytes = body.Length;
        }
        return ([.. times.Order()], worked.TotalMilliseconds / Rounds, bytes);
    }

    static string Told((double[] Ms, double Processor, long) t) => string.Create(CultureInfo.InvariantCulture, $"median {t.Ms[t.Ms.Length / 2],6:0.0} p95 {t.Ms[(int)(t.Ms.Length * 0.95)],6:0.0} ms (processor {t.Processor,5:0.0})");

    static async Task<Guid> Fill(string path)
    {
        var room = await RecordRoom.Open(path);
        var van = new Vehicle(Id(0, 0), "Grown van", "", "", 1931, "");
        ImmutableArray<VehicleSystem> systems = [.. Enumerable.Range(0, 12).Select(i => new VehicleSystem(Id(1, i), van.Id, $"System {i}", i))];
        ImmutableArray<Part> parts = [.. Enumerable.Range(0, Parts).Select(i => new Part(Id(2, i), systems[i % 12].Id, $"Bracket {i}", $"R-{i}", Hand.None, 1 + i % 4, "rusted along the lower edge", null))];
        await room.Vehicles.TakeIn(new(van, systems, [], parts, [], ImmutableDictionary<Guid, string>.Empty));
        foreach (var stretch in Enumerable.Range(0, Pictures).Chunk(1000))
            await room.Desk.PicturesTaken.Append([.. stretch.Select(i => new PictureTaken(Id(3, i), van.Id, i % 9 == 0 ? null : parts[i * 7919 % Parts].Id, $"{i:x64}", "lug to the rear", Begin.AddMinutes(7 * i), "phone"))]);
        await room.Desk.Notes.Append([.. Enumerable.Range(0, Notes).Select(i => new Note(Id(4, i), van.Id, parts[i].Id, "the second bolt is a replacement, shorter by two threads", Begin.AddHours(i), "phone"))]);
        ImmutableArray<Job> jobs = [.. Enumerable.Range(0, Jobs).Select(i => Job.Plain(Id(5, i), van.Id, systems[i % 12].Id, parts[i].Id, $"Make bracket {i}", WorkKind.Make, new(1, 2, 4), Cost.None("GBP")))];
        await room.Jobs.Add(jobs);
        await room.Hours.Append([.. Enumerable.Range(0, Lines).Select(i =>
            new HoursEntry(Id(6, i), jobs[i % Jobs].Id, null, new DateTimeOffset(2024, 1, 1, 18, 0, 0, TimeSpan.Zero).AddHours(2 * i), 45, "filed and fitted", "phone"))]);
        return van.Id;
    }

    static Guid Id(int kind, int n) => new(n + 1, (short)kind, 0, [1, 2, 3, 4, 5, 6, 7, 8]);
}
