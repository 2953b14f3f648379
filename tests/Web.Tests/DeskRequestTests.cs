using System.Net;
using System.Net.Http.Json;
using System.Text;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Tests;

/// <summary>What the plain handlers of the desk refuse, and with which status.</summary>
public sealed class DeskRequestTests(RunningHost running) : IClassFixture<RunningHost>
{
    static readonly string Desk = $"api/vehicles/{new Guid("00000000-0000-4000-8000-000000000001")}/desk";

    [Theory]
    [Truth(Grade.Published, "RFC 9110: 15.5.1 (400, what was sent cannot be read), 15.5.16 (415, it is not of a kind that is taken)")]
    [InlineData("[{\"id\": ", "application/json", HttpStatusCode.BadRequest, "The JSON is broken at line 1")]
    [InlineData("[{\"id\": 7}]", "application/json", HttpStatusCode.BadRequest, "The JSON is broken at line 1")]
    [InlineData("null", "application/json", HttpStatusCode.BadRequest, "")]
    [InlineData("[null]", "application/json", HttpStatusCode.BadRequest, "row 0")]
    [InlineData("", "application/json", HttpStatusCode.BadRequest, "could not be read")]
    [InlineData("[]", "text/plain", HttpStatusCode.UnsupportedMediaType, "send JSON")]
    public async Task What_cannot_be_read_is_refused_in_a_sentence(string body, string type, HttpStatusCode status, string words)
    {
        var answer = await running.Host.Http.PostAsync($"{Desk}/Note", new StringContent(body, Encoding.UTF8, type));
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(words, (await answer.Content.ReadFromJsonAsync(WireJson.Default.Refused))!.Refusal);
    }

    [Theory]
    [Truth(Grade.Property, "a refusal names the field, the value and what would be right")]
    [InlineData("before", "soon", "whole number")]
    [InlineData("take", "1.5", "whole number")]
    [InlineData("part", "H1", "an id")]
    public async Task A_value_of_the_address_that_cannot_be_read_is_named(string field, string value, string right)
    {
        var answer = await running.Host.Http.GetAsync($"{Desk}/Note/newest?{field}={value}");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var said = (await answer.Content.ReadFromJsonAsync(WireJson.Default.Refused))!.Refusal;
        Assert.All([field, value, right], part => Assert.Contains(part, said));
    }

    [Fact]
    [Truth(Grade.Published, "RFC 8259, 8.1 (JSON is UTF-8); RFC 9110, 15.5.5 (404, nothing is found at the address)")]
    public async Task It_is_answered_as_JSON_and_only_where_something_is_kept()
    {
        var answer = await running.Host.Http.GetAsync($"{Desk}/Note");
        Assert.Equal("application/json; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal("[]", await answer.Content.ReadAsStringAsync());
        Assert.Equal(HttpStatusCode.NotFound, (await running.Host.Http.GetAsync($"{Desk}/Nothing")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await running.Host.Http.GetAsync("api/vehicles/van/desk/Note")).StatusCode);
    }
}
