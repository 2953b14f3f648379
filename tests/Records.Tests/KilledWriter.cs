using System.Runtime.CompilerServices;

namespace WitnessMark.Records.Tests;

/// <summary>
/// The child process of <see cref="DurabilityTests"/>: this test program started anew with the path of a records file in its
/// environment. It appends readings one by one, says each number once it is acknowledged, and goes on until it is killed.
/// </summary>
static class KilledWriter
{
    public const string Variable = "WITNESS_MARK_KILLED_WRITER";

    [ModuleInitializer]
    public static void Run()
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } path) Write(path).GetAwaiter().GetResult();
    }

    static async Task Write(string path)
    {
        var room = await RecordRoom.Open(path);
        for (var n = 1; ; n++)
        {
            await room.Readings.Append([DurabilityTests.Nth(n)]);
            Console.Out.WriteLine(n);
            Console.Out.Flush();
        }
    }
}
