using System.Globalization;
using System.Net;
using System.Threading.RateLimiting;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Hosting;

/// <summary>
/// How much one machine may ask. Buckets that fill again evenly: a phone that comes back with 500 entries is let through at once,
/// one that never stops is slowed to the refill. The desk has ten times as much, and is not in line with the others.
/// </summary>
sealed class Turnstile(Turnstile.Rates rates) : IAsyncDisposable
{
    /// <param name="Api">Requests of the API in one go, and again in each <see cref="Every"/>.</param>
    /// <param name="Pages">Files of the app; a first visit takes about 200.</param>
    /// <param name="Pairing">Tries to be paired in a minute.</param>
    public sealed record Rates(int Api = 600, int Pages = 2000, int Pairing = 10)
    {
        public static readonly TimeSpan Every = TimeSpan.FromSeconds(10);
    }

    const int DeskTimes = 10, Steps = 20;

    readonly PartitionedRateLimiter<HttpContext> _limits = PartitionedRateLimiter.CreateChained(
        PartitionedRateLimiter.Create<HttpContext, string>(c => Part(c, Guard.IsApi(c) ? "api" : "page", Guard.IsApi(c) ? rates.Api : rates.Pages, Rates.Every)),
        PartitionedRateLimiter.Create<HttpContext, string>(c => IsPairing(c.Request)
            ? Part(c, "pairing", rates.Pairing, TimeSpan.FromMinutes(1)) : RateLimitPartition.GetNoLimiter("")));

    public async Task<RateLimitLease> Ask(HttpContext context) => await _limits.AcquireAsync(context, 1, context.RequestAborted);

    public static IResult TooMany(HttpContext context, TimeSpan wait, string sentence)
    {
        context.Response.Headers.RetryAfter = Math.Ceiling(Math.Max(1, wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
        return Results.Json(new Refused(sentence), statusCode: StatusCodes.Status429TooManyRequests);
    }

    public ValueTask DisposeAsync() => _limits.DisposeAsync();

    static bool IsPairing(HttpRequest request) => HttpMethods.IsPost(request.Method) && request.Path.Equals("/api/pairing", StringComparison.OrdinalIgnoreCase);

    static RateLimitPartition<string> Part(HttpContext context, string kind, int most, TimeSpan every)
    {
        var limit = context.FromDesk ? most * DeskTimes : most;
        return RateLimitPartition.GetTokenBucketLimiter($"{kind} {Asker(context)}", _ => new()
        {
            TokenLimit = limit,
            TokensPerPeriod = Math.Max(1, limit / Steps),
            ReplenishmentPeriod = every * Math.Max(1, limit / Steps) / limit,
            QueueLimit = 0,
        });
    }

    /// <summary>The address of the connection itself; what a proxy tells of others is not heard. Of IPv6 the network, for a machine may take any address in it.</summary>
    static string Asker(HttpContext context)
    {
        if (context.FromDesk) return "desk";
        var address = context.Connection.RemoteIpAddress ?? IPAddress.None;
        if (address.IsIPv4MappedToIPv6) address = address.MapToIPv4();
        var bytes = address.GetAddressBytes();
        return Convert.ToHexString(bytes.Length == 16 ? bytes.AsSpan(0, 8) : bytes);
    }
}

static class Turnstiles
{
    public static void UseTurnstile(this WebApplication app) => app.Use(async (context, next) =>
    {
        using var lease = await context.RequestServices.GetRequiredService<Turnstile>().Ask(context);
        if (lease.IsAcquired) await next();
        else
        {
            var wait = lease.TryGetMetadata(MetadataName.RetryAfter, out var told) ? told : Turnstile.Rates.Every;
            await Turnstile.TooMany(context, wait, "Too much was asked at once; wait a little. What waits on this device is kept.").ExecuteAsync(context);
        }
    });
}
