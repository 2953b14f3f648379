using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

// In one process, each figure against its named alternative: dotnet run -c Release --project bench -- --filter '*'
var config = DefaultConfig.Instance
    .AddJob(Job.Default.WithToolchain(new InProcessEmitToolchain(TimeSpan.FromHours(1), logOutput: true)).WithWarmupCount(3).WithIterationCount(9))
    .WithArtifactsPath(Path.Combine("artifacts", "bench"));
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, config);
