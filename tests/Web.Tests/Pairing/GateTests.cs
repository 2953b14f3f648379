using System.Net;
using System.Net.Http.Json;
using System.Text;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Tests.Pairing;

/// <summary>Who is let in is told by the listener and the key, never by what a request says of itself.</summary>
public sealed class GateTests
{
    [Theory]
    [InlineData("api/vehicles")]
    [InlineData("api/devices")]
    [InlineData("api/pairing/code")]
    [InlineData("API/vehicles")]
    [InlineData("api/nothing")]
    [InlineData("api/pictures/0000")]
    public async Task Without_a_key_nothing_of_the_records_is_told(string address)
    {
        await using var house = await PairedHouse.Open();
        var response = await house.Phone().GetAsync(address);
        Assert.Equal(HttpStatusCode.Unauthorized, response.StatusCode);
        Assert.Contains("not paired", await PairedHouse.Why(response));
    }

    [Theory]
    [InlineData("api/pairing/code", "POST")]
    [InlineData("api/withdrawals", "POST")]
    [InlineData("api/shop", "PUT")]
    public async Task Without_a_key_nothing_is_changed(string address, string method)
    {
        await using var house = await PairedHouse.Open();
        var request = new HttpRequestMessage(new(method), address) { Content = new StringContent("[]", Encoding.UTF8, "application/json") };
        Assert.Equal(HttpStatusCode.Unauthorized, (await house.Phone().SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("AAAA")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("%00%00")]
    public async Task A_key_that_nobody_was_given_opens_nothing(string key)
    {
        await using var house = await PairedHouse.Open();
        await house.PairedPhone();
        var request = new HttpRequestMessage(HttpMethod.Get, "api/vehicles");
        request.Headers.Add("Cookie", $"__Host-wm-device={key}");
        Assert.Equal(HttpStatusCode.Unauthorized, (await house.Phone().SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("Host", "localhost")]
    [InlineData("X-Forwarded-For", "127.0.0.1")]
    [InlineData("X-Forwarded-Host", "localhost")]
    [InlineData("X-Forwarded-Proto", "http")]
    [InlineData("Forwarded", "for=127.0.0.1;host=localhost")]
    public async Task No_header_makes_a_request_of_the_network_one_of_the_desk(string header, string value)
    {
        await using var house = await PairedHouse.Open();
        var request = new HttpRequestMessage(HttpMethod.Get, "api/vehicles");
        request.Headers.TryAddWithoutValidation(header, value);
        Assert.Equal(HttpStatusCode.Unauthorized, (await house.Phone(tellsOrigin: false).SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task Forwarding_headers_are_not_heard_even_if_the_environment_asks_for_it()
    {
        Environment.SetEnvironmentVariable("ASPNETCORE_FORWARDEDHEADERS_ENABLED", "true");
        try
        {
            await using var house = await PairedHouse.Open();
            var request = new HttpRequestMessage(HttpMethod.Get, "api/pairing");
            request.Headers.TryAddWithoutValidation("X-Forwarded-Host", "attacker.example");
            request.Headers.TryAddWithoutValidation("X-Forwarded-Proto", "http");
            // Were they heard, the origin would no longer be the host's.
            Assert.Equal(HttpStatusCode.OK, (await house.Phone().SendAsync(request)).StatusCode);
        }
        finally
        {
            Environment.SetEnvironmentVariable("ASPNETCORE_FORWARDEDHEADERS_ENABLED", null);
        }
    }

    [Theory]
    [InlineData("attacker.example")]
    [InlineData("192.168.77.77")]
    [InlineData("127.0.0.1.attacker.example")]
    public async Task A_name_that_is_not_in_the_certificate_is_refused_on_the_network(string name)
    {
        await using var house = await PairedHouse.Open();
        var request = new HttpRequestMessage(HttpMethod.Get, "api/pairing");
        request.Headers.Host = name;
        var phone = house.Phone(tellsOrigin: false, byAnyName: true);
        Assert.Equal(HttpStatusCode.Forbidden, (await phone.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task The_desk_is_not_called_by_a_name_of_the_network()
    {
        await using var house = await PairedHouse.Open();
        using var desk = house.AtTheDesk();
        var request = new HttpRequestMessage(HttpMethod.Get, "api/vehicles");
        request.Headers.Host = $"{Environment.MachineName.ToLowerInvariant()}.local";
        Assert.Equal(HttpStatusCode.Forbidden, (await desk.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("Origin", "https://attacker.example")]
    [InlineData("Origin", "null")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    [InlineData("Sec-Fetch-Site", "none")]
    [Truth(Grade.Published, "RFC 6454 (an origin is scheme, host and port); W3C Fetch Metadata Request Headers, Sec-Fetch-Site")]
    public async Task A_page_from_elsewhere_may_not_act_by_a_paired_device(string header, string value)
    {
        await using var house = await PairedHouse.Open();
        var cookies = new CookieContainer();
        await house.PairedPhone(cookies: cookies);
        var elsewhere = house.Phone(cookies, tellsOrigin: false);
        var request = new HttpRequestMessage(HttpMethod.Post, "api/withdrawals") { Content = new StringContent("[]", Encoding.UTF8, "application/json") };
        request.Headers.Add(header, value);
        Assert.Equal(HttpStatusCode.Forbidden, (await elsewhere.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task A_change_by_the_network_must_say_where_it_comes_from_and_one_at_the_desk_need_not()
    {
        await using var house = await PairedHouse.Open();
        var cookies = new CookieContainer();
        await house.PairedPhone(cookies: cookies);
        var silent = house.Phone(cookies, tellsOrigin: false);
        Assert.Equal(HttpStatusCode.Forbidden, (await silent.PostAsync("api/pairing/code", null)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await silent.GetAsync("api/vehicles")).StatusCode);
        silent.DefaultRequestHeaders.Add("Sec-Fetch-Site", "same-origin");
        Assert.Equal(HttpStatusCode.OK, (await silent.PostAsync("api/pairing/code", null)).StatusCode);
        using var desk = house.AtTheDesk();
        Assert.Equal(HttpStatusCode.OK, (await desk.PostAsync("api/pairing/code", null)).StatusCode);
    }

    [Fact]
    public async Task Too_large_a_request_is_refused_by_size_told_or_not()
    {
        await using var house = await PairedHouse.Open();
        var phone = await house.PairedPhone();
        // It is asked first whether so much may come (RFC 9110, 10.1.1), for a host that refuses does not read on.
        var told = new HttpRequestMessage(HttpMethod.Post, "api/withdrawals") { Content = new ByteArrayContent(new byte[3 << 20]) };
        told.Headers.ExpectContinue = true;
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await phone.SendAsync(told)).StatusCode);
        var streamed = new HttpRequestMessage(HttpMethod.Post, "api/withdrawals") { Content = new StreamContent(new MemoryStream([.. Enumerable.Repeat((byte)' ', (2 << 20) + 1)])) };
        streamed.Content.Headers.ContentType = new("application/json");
        streamed.Headers.TransferEncodingChunked = true;
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await phone.SendAsync(streamed)).StatusCode);
    }

    [Fact]
    [Truth(Grade.Published, "RFC 6585, 4 and 5: 429 with Retry-After; 431 for header fields that are too large. RFC 9110, 15.5.15: 414")]
    public async Task Long_addresses_large_headers_and_many_requests_are_refused()
    {
        await using var house = await PairedHouse.Open();
        var phone = await house.PairedPhone();
        Assert.Equal(HttpStatusCode.RequestUriTooLong, (await phone.GetAsync("api/vehicles?" + new string('a', 5000))).StatusCode);
        var heavy = new HttpRequestMessage(HttpMethod.Get, "api/vehicles");
        heavy.Headers.Add("X-Heavy", new string('a', 20_000));
        Assert.Equal(HttpStatusCode.RequestHeaderFieldsTooLarge, (await phone.SendAsync(heavy)).StatusCode);

        // 500 entries of a phone that comes back go through; one that never stops is held up, and the desk is not.
        for (var i = 0; i < 500; i++) Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("api/pairing")).StatusCode);
        HttpResponseMessage? held = null;
        for (var i = 0; i < 5000 && held is null; i++)
            if (await phone.GetAsync("api/pairing") is { StatusCode: not HttpStatusCode.OK } other) held = other;
        Assert.Equal(HttpStatusCode.TooManyRequests, held!.StatusCode);
        Assert.InRange(held.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 10);
        Assert.Contains("wait", await PairedHouse.Why(held));
        using var desk = house.AtTheDesk();
        Assert.Equal(HttpStatusCode.OK, (await desk.GetAsync("api/vehicles")).StatusCode);
    }

    [Fact]
    public async Task Tries_to_be_paired_are_held_up_after_ten_in_a_minute()
    {
        await using var house = await PairedHouse.Open();
        var phone = house.Phone();
        for (var i = 0; i < 10; i++) Assert.Equal(HttpStatusCode.BadRequest, (await PairedHouse.Pair(phone, "1")).StatusCode);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await PairedHouse.Pair(phone, "1")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("api/pairing")).StatusCode);
    }

    [Fact]
    public async Task Every_answer_carries_the_policies()
    {
        await using var house = await PairedHouse.Open();
        foreach (var address in new[] { "", "pair", "trust", "api/pairing", "api/vehicles" })
        {
            var headers = (await house.Phone().GetAsync(address)).Headers;
            Assert.Contains("manifest-src 'self'", headers.GetValues("Content-Security-Policy").Single());
            Assert.Contains("camera=(self)", headers.GetValues("Permissions-Policy").Single());
            Assert.Equal("nosniff", headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal("no-referrer", headers.GetValues("Referrer-Policy").Single());
        }
    }

    [Fact]
    public async Task Without_the_network_there_are_no_codes_and_no_authority()
    {
        await using var host = await HostProcess.Start();
        Assert.Equal(HttpStatusCode.BadRequest, (await host.Http.PostAsync("api/pairing/code", null)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await host.Http.GetAsync("api/pairing/authority.crt")).StatusCode);
        var shown = await host.Http.GetFromJsonAsync("api/pairing", PairJson.Default.HouseShown);
        Assert.True(shown is { Desk: true, Fingerprint: null } && shown.Addresses.IsEmpty);
    }
}
