using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using WitnessMark.Stores;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Tests;

public sealed class RememberedTests(RunningHost running) : IClassFixture<RunningHost>
{
    HttpClient Http => running.Host.Http;

    [Fact]
    [Truth(Grade.Published, "RFC 9110, 13.1.2 and 15.4.5: If-None-Match with the standing tag is answered 304 without a body, and 200 once it has changed")]
    public async Task A_read_is_answered_anew_only_after_a_change()
    {
        var first = await Http.GetAsync("api/vehicles");
        Assert.True(first.Headers.CacheControl is { NoCache: true, Private: true });
        Assert.Equal(HttpStatusCode.NotModified, (await Ask(first.Headers.ETag!)).StatusCode);

        var van = new Vehicle(Guid.NewGuid(), $"Van {Guid.NewGuid():N}", "", "", null, "");
        (await Http.PutAsJsonAsync($"api/vehicles/{van.Id}", new Saving<Vehicle>(van, 0), WireJson.Default.SavingVehicle)).EnsureSuccessStatusCode();
        var changed = await Ask(first.Headers.ETag!);
        Assert.Equal(HttpStatusCode.OK, changed.StatusCode);
        Assert.Contains(van.Name, await changed.Content.ReadAsStringAsync());
        Assert.Equal(await changed.Content.ReadAsStringAsync(), await (await Http.GetAsync("api/vehicles")).Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task What_is_not_there_is_not_remembered_as_missing()
    {
        var van = new Vehicle(Guid.NewGuid(), $"Van {Guid.NewGuid():N}", "", "", null, "");
        var none = await Http.GetAsync($"api/vehicles/{van.Id}");
        Assert.Equal((HttpStatusCode.NotFound, true), (none.StatusCode, none.Headers.ETag is null));
        Assert.Contains("no such vehicle", await none.Content.ReadAsStringAsync());
        (await Http.PutAsJsonAsync($"api/vehicles/{van.Id}", new Saving<Vehicle>(van, 0), WireJson.Default.SavingVehicle)).EnsureSuccessStatusCode();
        Assert.Equal(HttpStatusCode.OK, (await Http.GetAsync($"api/vehicles/{van.Id}")).StatusCode);
    }

    Task<HttpResponseMessage> Ask(EntityTagHeaderValue tag)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, "api/vehicles");
        request.Headers.IfNoneMatch.Add(tag);
        return Http.SendAsync(request);
    }
}
