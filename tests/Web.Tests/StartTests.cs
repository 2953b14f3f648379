namespace WitnessMark.Web.Tests;

public sealed class StartTests
{
    [Theory]
    [InlineData("--address", "0.0.0.0", "--address: \"0.0.0.0\" is not accepted; only this machine is served, write 127.0.0.1.")]
    [InlineData("--port", "70000", "--port: \"70000\" is not accepted; write a port from 1 to 65535, or 0 for a free one.")]
    public async Task What_is_asked_wrongly_is_refused_in_one_sentence(string option, string value, string sentence)
    {
        var (code, errors) = await HostProcess.Run([option, value]);
        Assert.Equal((2, sentence), (code, errors));
    }

    [Fact]
    public async Task An_open_address_in_the_environment_is_refused()
    {
        var (code, errors) = await HostProcess.Run(["--port", "0"], urls: "http://0.0.0.0:5000");
        Assert.Equal(2, code);
        Assert.StartsWith("ASPNETCORE_URLS: \"http://0.0.0.0:5000\"", errors);
    }

    [Fact]
    public async Task A_port_in_use_is_told()
    {
        await using var first = await HostProcess.Start();
        var (code, errors) = await HostProcess.Run(["--port", $"{first.Address.Port}", "--db", first.Database + ".other"]);
        Assert.Equal(2, code);
        Assert.Contains("is in use", errors);
    }

    [Fact]
    public async Task A_file_that_holds_no_records_is_refused_and_left_alone()
    {
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, new string('x', 5000));
        var (code, errors) = await HostProcess.Run(["--port", "0", "--db", file]);
        Assert.Equal(2, code);
        Assert.Contains(file, errors);
        Assert.Equal(new string('x', 5000), await File.ReadAllTextAsync(file));
        File.Delete(file);
    }

    [Fact]
    public async Task Closing_it_ends_cleanly()
    {
        await using var host = await HostProcess.Start();
        Assert.Equal(0, await host.Close());
    }
}
