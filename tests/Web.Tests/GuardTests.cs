using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using WitnessMark.Tests;

namespace WitnessMark.Web.Tests;

public sealed partial class GuardTests(RunningHost running) : IClassFixture<RunningHost>
{
    HttpClient Http => running.Host.Http;

    [Theory]
    [InlineData("attacker.example")]
    [InlineData("10.0.0.7:80")]
    [InlineData("localhost.attacker.example")]
    public async Task A_name_that_is_not_this_machines_is_refused_against_DNS_rebinding(string host)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, "api/vehicles");
        request.Headers.Host = host;
        var response = await Http.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
        Assert.Contains(host, await response.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("Origin", "https://attacker.example")]
    [InlineData("Origin", "null")]
    [InlineData("Origin", "http://127.0.0.1:1")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    [Truth(Grade.Published, "RFC 6454 (an origin is scheme, host and port); W3C Fetch Metadata Request Headers, Sec-Fetch-Site")]
    public async Task A_page_from_elsewhere_may_not_write(string header, string value)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, "api/withdrawals") { Content = new StringContent("[]") };
        request.Headers.Add(header, value);
        Assert.Equal(HttpStatusCode.Forbidden, (await Http.SendAsync(request)).StatusCode);
    }

    [Fact]
    [Truth(Grade.Published, "W3C Content Security Policy Level 3, 'wasm-unsafe-eval' (compiling WebAssembly without eval)")]
    public async Task The_page_allows_no_inline_script_and_has_none()
    {
        var response = await Http.GetAsync("vehicle/1");
        var policy = response.Headers.GetValues("Content-Security-Policy").Single();
        Assert.DoesNotContain("'unsafe-inline'", policy);
        Assert.DoesNotContain("'unsafe-eval'", policy);
        Assert.Contains("default-src 'none'", policy);
        var html = await response.Content.ReadAsStringAsync();
        Assert.All(Script().Matches(html), s => Assert.Contains("src=", s.Groups[1].Value));
        Assert.DoesNotMatch(StyleOrHandler(), html);
    }

    [Fact]
    public async Task Only_the_loopback_address_answers()
    {
        var others = NetworkInterface.GetAllNetworkInterfaces()
            .SelectMany(n => n.GetIPProperties().UnicastAddresses).Select(a => a.Address)
            .Where(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a));
        foreach (var other in others)
        {
            using var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
            await Assert.ThrowsAnyAsync<SocketException>(() => socket.ConnectAsync(other, running.Host.Address.Port));
        }
        Assert.Equal(HttpStatusCode.OK, (await Http.GetAsync("api/vehicles")).StatusCode);
    }

    [Fact]
    public async Task An_address_that_keeps_nothing_says_so()
    {
        var response = await Http.GetAsync("api/nothing/here");
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Contains("refusal", await response.Content.ReadAsStringAsync());
    }

    [GeneratedRegex("<script([^>]*)>")]
    private static partial Regex Script();

    [GeneratedRegex(@"<style|\sstyle=|\son\w+=")]
    private static partial Regex StyleOrHandler();
}
