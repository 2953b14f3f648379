namespace WitnessMark.Web.Tests.Pairing;

/// <summary>A clock that stands until it is moved.</summary>
sealed class FakeClock(DateTimeOffset now) : TimeProvider
{
    long _ticks = now.UtcTicks;

    /// <summary>Within the life of a certificate made today, for the handshake is judged by the machine's own clock.</summary>
    public static FakeClock Today() => new(System.GetUtcNow());

    public override DateTimeOffset GetUtcNow() => new(Interlocked.Read(ref _ticks), TimeSpan.Zero);

    public void Pass(TimeSpan time) => Interlocked.Add(ref _ticks, time.Ticks);
}
