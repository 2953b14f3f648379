using System.Diagnostics;

namespace WitnessMark.Tests.Cli;

/// <summary>The built program as a shell sees it.</summary>
public class ProcessTests
{
    [Theory]
    [InlineData("units 25.4", 0)]
    [InlineData("units 1,250", 2)]
    [InlineData("survey solve demo/samples/lamp-bracket.csv --json", 0)]
    [InlineData("survey solve none.csv", 2)]
    public async Task Exit_codes_reach_the_shell(string command, int code)
    {
        var start = new ProcessStartInfo("dotnet", $"wmark.dll {command}") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = AppContext.BaseDirectory };
        using var process = Process.Start(start)!;
        var (said, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync();
        Assert.Equal(code, process.ExitCode);
        Assert.Equal(code == 0, (await said).Length > 0);
        Assert.Equal(code == 0, (await error).Length == 0);
    }
}
