using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Features;
using WitnessMark.Maths;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>What a plain handler takes from its request and gives back, refused with the same status codes as the handlers with parameters.</summary>
static class DeskRequest
{
    extension(HttpContext context)
    {
        /// <summary>An id of the address, whose pattern let nothing else through.</summary>
        public Guid Id(string name) => Guid.Parse((string)context.GetRouteValue(name)!);

        /// <summary>A value after the question mark; null when it is not there.</summary>
        public T? Asked<T>(string name) where T : struct, IParsable<T>
        {
            if (context.Request.Query[name] is not [{ } text, ..]) return null;
            return T.TryParse(text, CultureInfo.InvariantCulture, out var value) ? value
                : throw new RefusedException(Refusal.Of(name, text, typeof(T) == typeof(Guid) ? "send an id" : "send a whole number"));
        }

        public async Task<T> Read<T>()
        {
            if (context.Features.Get<IHttpRequestBodyDetectionFeature>() is { CanHaveBody: false }) throw new BadHttpRequestException("Nothing was sent.");
            if (!context.Request.HasJsonContentType()) throw new BadHttpRequestException("No JSON was sent.", StatusCodes.Status415UnsupportedMediaType);
            try
            {
                return await context.Request.ReadFromJsonAsync(DeskJson.Of<T>(), context.RequestAborted) ?? throw new BadHttpRequestException("Null was sent.");
            }
            catch (JsonException e)
            {
                throw new BadHttpRequestException("Broken JSON was sent.", e);
            }
        }

        public Task Write<T>(T value) => context.Response.WriteAsJsonAsync(value, DeskJson.Of<T>(), contentType: null, context.RequestAborted);
    }
}
