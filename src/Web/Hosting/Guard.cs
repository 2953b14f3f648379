using System.Net;
using Microsoft.AspNetCore.Http.Features;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Api;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Hosting;

/// <summary>
/// Keeps other pages and other machines out. The house has no password: it answers only a browser on this machine
/// that asks for it by a loopback name (against DNS rebinding) and from its own pages (against cross-site requests).
/// </summary>
static class Guard
{
    /// <summary>No inline script or style, nothing from elsewhere. Blazor needs wasm-unsafe-eval to compile WebAssembly; blob: is for downloads and previews made in the page.</summary>
    const string ContentPolicy =
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; " +
        "connect-src 'self'; font-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'self'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>Largest request body, bytes: a thousand readings at once are well below it.</summary>
    public const long LargestBody = 2 << 20;

    /// <summary>For a set of changes, bytes: one of 5,000 parts, before and after, takes about 3 MB.</summary>
    const long LargestChanges = 32 << 20;

    public static void UseGuard(this WebApplication app) => app.Use(async (context, next) =>
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        if (LargestOf(context.Request) != LargestBody && context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = LargestOf(context.Request);
        var (status, why) = WhyRefused(context.Request) is { } foreign ? (StatusCodes.Status403Forbidden, foreign)
            : context.Request.ContentLength > LargestOf(context.Request) ? (StatusCodes.Status413PayloadTooLarge, "The request is too large; send less at once.")
            : (0, null);
        if (why is null) await next();
        else await Results.Json(new Refused(why), statusCode: status).ExecuteAsync(context);
    });

    static long LargestOf(HttpRequest request) =>
        request.Path == PictureApi.Address ? PictureKind.Largest
        : request.Path.Value is { } path && path.EndsWith("/changes", StringComparison.Ordinal) ? LargestChanges
        : LargestBody;

    internal static string? WhyRefused(HttpRequest request)
    {
        if (!IsOwnHost(request.Host))
            return $"The host name \"{request.Host}\" is not this machine's own; open http://127.0.0.1 with the port that was printed.";
        var origin = request.Headers.Origin.ToString();
        if (origin.Length > 0 && origin != $"{request.Scheme}://{request.Host}")
            return $"A page from \"{origin}\" may not use these records.";
        if (request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" or "same-site" && request.Path.StartsWithSegments("/api"))
            return "A page from another address may not use these records.";
        return null;
    }

    static bool IsOwnHost(HostString host) =>
        host.Host == "localhost" || (IPAddress.TryParse(host.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));
}
