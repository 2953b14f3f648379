using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>
/// Over HTTP. An answer counts only when it is the host's own JSON: the sign-on page of somebody's network is no acknowledgement,
/// and what it refuses is not refused.
/// </summary>
public sealed class HttpCarrier(HttpClient http) : ICarrier
{
    public Task<Answer> Carry(HttpMethod method, string address, string json) => Carry(method, address, new StringContent(json, Encoding.UTF8, "application/json"));

    public Task<Answer> Carry(string address, byte[] bytes)
    {
        var content = new ByteArrayContent(bytes);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        return Carry(HttpMethod.Post, address, content);
    }

    async Task<Answer> Carry(HttpMethod method, string address, HttpContent content)
    {
        try
        {
            using var request = new HttpRequestMessage(method, address) { Content = content };
            using var response = await http.SendAsync(request);
            return Read(response.StatusCode, await response.Content.ReadAsStringAsync());
        }
        catch (Exception e) when (e is HttpRequestException or OperationCanceledException)
        {
            return new(Fate.Away);
        }
    }

    public static Answer Read(HttpStatusCode status, string text)
    {
        if (status == HttpStatusCode.Unauthorized) return new(Fate.Unpaired);
        if ((int)status >= 500 || status is HttpStatusCode.TooManyRequests or HttpStatusCode.RequestTimeout) return new(Fate.Away);
        try
        {
            using var answer = JsonDocument.Parse(text);
            var root = answer.RootElement;
            if (root.ValueKind != JsonValueKind.Object) return new(Fate.Away);
            if (root.TryGetProperty("standing", out var standing))
                return new(root.GetProperty("clash").GetBoolean() ? Fate.Clash : Fate.Done, standing.GetProperty("row").GetRawText(), standing.GetProperty("version").GetInt32());
            if ((int)status < 300 && (root.TryGetProperty("new", out _) || root.TryGetProperty("id", out _))) return new(Fate.Done);
            return (int)status >= 400 && root.TryGetProperty("refusal", out var why) && why.GetString() is { } sentence ? new(Fate.Refused, sentence) : new(Fate.Away);
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return new(Fate.Away);
        }
    }
}
