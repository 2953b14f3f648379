using System.Net;
using Microsoft.AspNetCore.Http.Features;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Api;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Pairing;

namespace WitnessMark.Web.Hosting;

/// <summary>
/// Keeps other pages out: a request must call the host by one of its own names (against DNS rebinding), and must come from its own pages
/// (against cross-site requests). Which devices may ask is for the gate to say.
/// </summary>
static class Guard
{
    /// <summary>No inline script or style, nothing from elsewhere. Blazor needs wasm-unsafe-eval to compile WebAssembly; blob: is for downloads and previews made in the page.</summary>
    const string ContentPolicy =
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; " +
        "connect-src 'self'; font-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'self'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>The camera is for the pictures and the tags; nothing else of the device is asked for.</summary>
    const string DevicePolicy =
        "camera=(self), accelerometer=(), display-capture=(), geolocation=(), gyroscope=(), hid=(), magnetometer=(), microphone=(), midi=(), payment=(), serial=(), usb=()";

    /// <summary>Largest request body, bytes: a thousand readings at once are well below it.</summary>
    public const long LargestBody = 2 << 20;

    /// <summary>For a set of changes, bytes: one of 5,000 parts, before and after, takes about 3 MB.</summary>
    const long LargestChanges = 32 << 20;

    public static bool IsApi(HttpContext context) => context.Request.Path.StartsWithSegments("/api");

    public static void UseGuard(this WebApplication app) => app.Use(async (context, next) =>
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Permissions-Policy"] = DevicePolicy;
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        // An answer of the API that says nothing of how long it holds is for this once.
        if (IsApi(context)) headers.CacheControl = "no-store";
        if (LargestOf(context.Request) != LargestBody && context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = LargestOf(context.Request);
        var (status, why) = WhyRefused(context) is { } foreign ? (StatusCodes.Status403Forbidden, foreign)
            : context.Request.ContentLength > LargestOf(context.Request) ? (StatusCodes.Status413PayloadTooLarge, "The request is too large; send less at once.")
            : (0, null);
        if (why is null) await next();
        else await Results.Json(new Refused(why), statusCode: status).ExecuteAsync(context);
    });

    static long LargestOf(HttpRequest request) =>
        request.Path == PictureApi.Address ? PictureKind.Largest
        : request.Path.Value is { } path && path.EndsWith("/changes", StringComparison.Ordinal) ? LargestChanges
        : LargestBody;

    static string? WhyRefused(HttpContext context)
    {
        var (request, desk) = (context.Request, context.FromDesk);
        if (!(desk ? IsLoopback(request.Host.Host) : context.RequestServices.GetRequiredService<LanHouse>().IsCalled(request.Host.Host)))
            return $"The host name \"{request.Host}\" is not this machine's own; open {(desk ? "http://127.0.0.1 with the port" : "one of the addresses")} that was printed.";
        var (origin, site) = (request.Headers.Origin.ToString(), request.Headers["Sec-Fetch-Site"].ToString());
        if (origin.Length > 0 && origin != $"{request.Scheme}://{request.Host}")
            return $"A page from \"{origin}\" may not use these records.";
        if (site is "cross-site" or "same-site" && IsApi(context))
            return "A page from another address may not use these records.";
        // Only a browser carries a device's key, and every browser tells where a change comes from. A program at the desk need not.
        if (!IsSafe(request.Method) && origin.Length == 0 && site != "same-origin" && !(desk && site.Length == 0))
            return "A change must come from the app's own pages; the browser must say so by Origin or Sec-Fetch-Site.";
        return null;
    }

    static bool IsSafe(string method) => HttpMethods.IsGet(method) || HttpMethods.IsHead(method);

    static bool IsLoopback(string host) =>
        host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));
}
