namespace WitnessMark.Web.Tests;

/// <summary>One host for all tests of a class that leave it running.</summary>
public sealed class RunningHost : IAsyncLifetime
{
    public HostProcess Host { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Host = await HostProcess.Start();

    public ValueTask DisposeAsync() => Host.DisposeAsync();
}
