using System.Collections.Concurrent;
using System.IO.Compression;
using Microsoft.AspNetCore.Http.Features;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Web.Api;

/// <summary>
/// Reads whose answer follows from the records and the address alone are remembered until the records change: answered again from memory,
/// or with 304 to a browser that has them (RFC 9110, If-None-Match). Whoever may not read has been turned away before.
/// </summary>
sealed class Remembered(IRecordStamp records)
{
    /// <summary>Most kept in memory, bytes; past it everything is forgotten and begins anew.</summary>
    const long Most = 64 << 20;

    /// <summary>Below this many bytes packing costs more than it saves.</summary>
    const int WorthPacking = 16 << 10;

    readonly ConcurrentDictionary<string, Kept> _kept = new();
    long _size;

    sealed record Kept(string Stamp, string? Type, byte[] Body)
    {
        readonly Lazy<byte[]> _packed = new(() => Pack(Body));

        /// <summary>Packed when it is first wanted so: a bench beside the host reads it plain.</summary>
        public byte[] Packed => _packed.Value;
    }

    public async Task Answer(HttpContext context, RequestDelegate read)
    {
        // Taken before the read: what is remembered is at least as new as its stamp says.
        var stamp = records.Now();
        var tag = $"\"{stamp}\"";
        // The browser asks each time, and is told that what it has still holds.
        context.Response.Headers.CacheControl = "private, no-cache";
        context.Response.Headers.ETag = tag;
        context.Response.Headers.Vary = "Accept-Encoding";
        if (context.Request.Headers.IfNoneMatch.Contains(tag))
        {
            context.Response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }
        var address = context.Request.Path + context.Request.QueryString.Value;
        if (!_kept.TryGetValue(address, out var kept) || kept.Stamp != stamp)
        {
            if (await Read(context, read, stamp) is not { } fresh) return;
            Keep(address, kept = fresh);
        }
        await Write(context, kept);
    }

    /// <summary>Null when the answer is no plain one and has been sent as it is.</summary>
    static async Task<Kept?> Read(HttpContext context, RequestDelegate read, string stamp)
    {
        var sent = context.Features.GetRequiredFeature<IHttpResponseBodyFeature>();
        using var body = new MemoryStream();
        context.Features.Set<IHttpResponseBodyFeature>(new StreamResponseBodyFeature(body));
        try
        {
            await read(context);
            await context.Response.BodyWriter.FlushAsync(context.RequestAborted);
        }
        finally
        {
            context.Features.Set(sent);
        }
        if (context.Response.StatusCode == StatusCodes.Status200OK)
            return new(stamp, context.Response.ContentType, body.ToArray());
        context.Response.Headers.ETag = default;
        context.Response.ContentLength = body.Length;
        await context.Response.Body.WriteAsync(body.GetBuffer().AsMemory(0, (int)body.Length), context.RequestAborted);
        return null;
    }

    static byte[] Pack(byte[] body)
    {
        using var packed = new MemoryStream();
        using (var to = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true)) to.Write(body);
        return packed.ToArray();
    }

    static Task Write(HttpContext context, Kept kept)
    {
        // By HTTPS it goes through the air; on this machine it costs nothing to send.
        var packed = context.Request.IsHttps && kept.Body.Length >= WorthPacking && context.Request.Headers.AcceptEncoding.ToString().Contains("gzip", StringComparison.OrdinalIgnoreCase);
        if (packed) context.Response.Headers.ContentEncoding = "gzip";
        var body = packed ? kept.Packed : kept.Body;
        context.Response.ContentType = kept.Type;
        context.Response.ContentLength = body.Length;
        return context.Response.Body.WriteAsync(body, context.RequestAborted).AsTask();
    }

    void Keep(string address, Kept kept)
    {
        if (Interlocked.Add(ref _size, kept.Body.Length) > Most)
        {
            _kept.Clear();
            Interlocked.Exchange(ref _size, 0);
        }
        _kept[address] = kept;
    }
}

/// <summary>Marks a group of addresses whose reads are remembered.</summary>
static class RememberedReads
{
    sealed record Mark;

    /// <summary>Their answers follow from the records and the address alone.</summary>
    public static RouteGroupBuilder Remembered(this RouteGroupBuilder group) => group.WithMetadata(new Mark());

    public static void UseRemembered(this WebApplication app)
    {
        var remembered = new Remembered(app.Services.GetRequiredService<IRecordStamp>());
        app.Use((context, next) =>
            HttpMethods.IsGet(context.Request.Method) && context.GetEndpoint()?.Metadata.GetMetadata<Mark>() is not null
                ? remembered.Answer(context, next) : next(context));
    }
}
