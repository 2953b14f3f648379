using System.Collections.Immutable;
using System.Net.Http.Json;
using System.Text.Json;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Shell.Devices;

/// <summary>Pairing over HTTP.</summary>
public sealed class PairServer(Server server, HttpClient http)
{
    static PairJson Json => PairJson.Default;

    public Task<Reply<HouseShown>> House() => server.Get("api/pairing", Json.HouseShown);

    public Task<Reply<PairingCode>> NewCode() => server.Send(HttpMethod.Post, "api/pairing/code", new StringContent(""), Json.PairingCode);

    public Task<Reply<CodeState>> Code() => server.Get("api/pairing/code", Json.CodeState);

    public Task<Reply<CodeState>> Withdraw() => server.Send(HttpMethod.Delete, "api/pairing/code", new StringContent(""), Json.CodeState);

    public Task<Reply<ImmutableArray<DeviceShown>>> Devices() => server.Get("api/devices", Json.ImmutableArrayDeviceShown);

    public Task<Reply<Recorded>> Rename(Guid device, string name) =>
        server.Send(HttpMethod.Put, $"api/devices/{device}", new(name), Json.DeviceName, Json.Recorded);

    public Task<Reply<Recorded>> Drop(Guid device) => server.Send(HttpMethod.Delete, $"api/devices/{device}", new StringContent(""), Json.Recorded);

    /// <summary>Asks to be paired; answers why not, or null when it is done. A wait that is asked for is told too: here a person stands before it.</summary>
    public async Task<string?> Pair(AskedToPair asked)
    {
        try
        {
            using var response = await http.PostAsync("api/pairing", JsonContent.Create(asked, Json.AskedToPair));
            if (!response.IsSuccessStatusCode)
                return (await response.Content.ReadFromJsonAsync(WireJson.Default.Refused))?.Refusal ?? $"The host refused it ({(int)response.StatusCode}).";
            server.Paired();
            return null;
        }
        catch (Exception e) when (e is HttpRequestException or JsonException or OperationCanceledException)
        {
            return "The host does not answer; see that this device is on the house's network, and try again.";
        }
    }
}
