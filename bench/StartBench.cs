using System.Diagnostics;
using System.Globalization;

namespace WitnessMark.Bench;

/// <summary>
/// How long a published host takes from its start to the first page and to the list of vehicles, and how much the first visit fetches.
/// The alternative in the same run: the same host with nothing compiled beforehand, and any other published folder that is named.
/// </summary>
static class StartBench
{
    const int Rounds = 7;

    const string Host = "WitnessMark.Web.dll";

    sealed record Way(string Name, string Folder, bool Compiled = true);

    /// <summary>ms by the clock to the first page and to the list, and of the processor to the list.</summary>
    sealed record Begun(double Page, double List, double Processor);

    public static async Task Run(params string[] folders)
    {
        if (folders.FirstOrDefault(f => !File.Exists(Path.Combine(f, Host))) is { } empty)
        {
            Console.WriteLine($"In \"{empty}\" there is no {Host}; publish it first: dotnet publish src/Web -c Release -o {empty}");
            return;
        }
        var records = Directory.CreateTempSubdirectory("witness-mark-start-");
        try
        {
            Way[] ways = [.. folders.Select(f => new Way(f, f)), new($"{folders[0]}, nothing compiled beforehand", folders[0], Compiled: false)];
            var times = ways.ToDictionary(w => w, _ => new List<Begun>());
            // The first of each makes its file of records and is not counted; then in turn, so that other work on the machine meets all alike.
            for (var round = 0; round <= Rounds; round++)
                foreach (var (i, way) in ways.Index())
                    if (await Begin(way, Path.Combine(records.FullName, $"{i}.db")) is var begun && round > 0) times[way].Add(begun);
            foreach (var way in ways)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{way.Name,-60} first page {Median(times[way], t => t.Page),6:0} ms   list of vehicles {Median(times[way], t => t.List),6:0} ms   processor {Median(times[way], t => t.Processor),6:0} ms"));
            foreach (var folder in folders)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{folder,-60} first download {Download(Path.Combine(folder, "wwwroot")) / 1e6:0.00} MB, the whole app packed"));
        }
        finally
        {
            records.Delete(recursive: true);
        }
    }

    static async Task<Begun> Begin(Way way, string database)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, ArgumentList = { Path.Combine(way.Folder, Host), "--port", "0", "--db", database } };
        if (!way.Compiled) start.Environment["DOTNET_ReadyToRun"] = "0";
        var begun = Stopwatch.GetTimestamp();
        using var host = Process.Start(start)!;
        try
        {
            var line = await host.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException($"The host in {way.Folder} did not start.");
            using var http = new HttpClient { BaseAddress = new Uri(line[line.IndexOf("http", StringComparison.Ordinal)..]) };
            await http.GetByteArrayAsync("");
            var page = Stopwatch.GetElapsedTime(begun);
            await http.GetByteArrayAsync("api/vehicles");
            var list = Stopwatch.GetElapsedTime(begun);
            host.Refresh();
            return new(page.TotalMilliseconds, list.TotalMilliseconds, host.TotalProcessorTime.TotalMilliseconds);
        }
        finally
        {
            host.Kill();
            await host.WaitForExitAsync();
        }
    }

    static double Median(List<Begun> times, Func<Begun, double> of) => times.Select(of).Order().ElementAt(times.Count / 2);

    /// <summary>Bytes over the line of every file of the app, each as small as it lies there.</summary>
    static long Download(string root) =>
        new DirectoryInfo(root).EnumerateFiles("*", SearchOption.AllDirectories)
            .Where(f => f.Extension is not (".br" or ".gz"))
            .Sum(f => new FileInfo(f.FullName + ".br") is { Exists: true } packed ? packed.Length : f.Length);
}
