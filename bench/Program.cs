using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using WitnessMark.Bench;

// Orders of work are judged by what they find in a given time: dotnet run -c Release --project bench -- order SECONDS EVERY
if (args is ["order", var seconds, var every])
{
    OrderBench.Run(double.Parse(seconds), int.Parse(every));
    return;
}

// The demonstration photograph, and one as large as a phone takes: dotnet run -c Release --project bench -- photographs FOLDER
if (args is ["photographs", var folder])
{
    Photographs.Write(folder);
    return;
}

// What was meant by simulated plates, scored: dotnet run -c Release --project bench -- intent FIRST COUNT
if (args is ["intent", var first, var count])
{
    IntentBench.Score(ulong.Parse(first), int.Parse(count));
    return;
}

// What the pages read from records that have grown for years: dotnet run -c Release --project bench -- shed FILE
if (args is ["shed", var file])
{
    await ShedReads.Run(file);
    return;
}

// From the start of a published host to its first page: dotnet run -c Release --project bench -- start FOLDER [OTHER …]
if (args is ["start", .. { Length: > 0 } folders])
{
    await StartBench.Run(folders);
    return;
}

// In one process, each figure against its named alternative: dotnet run -c Release --project bench -- --filter '*'
var config = DefaultConfig.Instance
    .AddJob(Job.Default.WithToolchain(new InProcessEmitToolchain(TimeSpan.FromHours(1), logOutput: true)).WithWarmupCount(3).WithIterationCount(9))
    .WithArtifactsPath(Path.Combine("artifacts", "bench"));
BenchmarkSwitcher.FromAssembly(typeof(ShedReads).Assembly).Run(args, config);
