using System.Net;
using System.Net.Http.Json;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Pairing;

namespace WitnessMark.Web.Tests.Pairing;

[Truth(Grade.Property, "a device that holds a key on record is answered; every other one that does not come from the desk is not")]
public sealed class PairingTests
{
    [Fact]
    public async Task A_device_is_paired_with_the_code_of_the_desk_and_then_answered()
    {
        await using var house = await PairedHouse.Open();
        var phone = house.Phone();
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.GetAsync("api/vehicles")).StatusCode);
        var code = await house.Code();
        Assert.Equal($"{house.Lan}pair#{code.Digits}", code.Address);
        Assert.Equal(8, code.Digits.Length);
        Assert.Equal(HttpStatusCode.OK, (await PairedHouse.Pair(phone, code.Digits[..4] + " " + code.Digits[4..])).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("api/vehicles")).StatusCode);
        var device = Assert.Single(await house.Devices());
        Assert.Equal("phone in the shed", device.Name);
        var shown = await phone.GetFromJsonAsync("api/pairing", PairJson.Default.HouseShown);
        Assert.Equal((false, "phone in the shed"), (shown!.Desk, shown.PairedAs));
    }

    [Fact]
    public async Task The_desk_needs_no_pairing()
    {
        await using var house = await PairedHouse.Open();
        using var desk = house.AtTheDesk();
        Assert.Equal(HttpStatusCode.OK, (await desk.GetAsync("api/vehicles")).StatusCode);
        Assert.True((await desk.GetFromJsonAsync("api/pairing", PairJson.Default.HouseShown))!.Desk);
        Assert.Equal(HttpStatusCode.BadRequest, (await PairedHouse.Pair(desk, "12345678")).StatusCode);
    }

    [Fact]
    [Truth(Grade.Published, "RFC 6265bis: the __Host- prefix needs Secure, Path=/ and no Domain; SameSite=Strict; HttpOnly; Max-Age of 400 days at most")]
    public async Task The_key_is_a_cookie_that_no_script_and_no_other_page_gets()
    {
        await using var house = await PairedHouse.Open();
        var response = await PairedHouse.Pair(house.Phone(), (await house.Code()).Digits);
        var cookie = Assert.Single(response.Headers.GetValues("Set-Cookie")).Split("; ");
        Assert.StartsWith("__Host-wm-device=", cookie[0]);
        // 256 bits in base64url without padding.
        Assert.Equal(43, cookie[0].Split('=')[1].Length);
        Assert.Equal(["httponly", $"max-age={400 * 86400}", "path=/", "samesite=strict", "secure"], cookie.Skip(1).Select(c => c.ToLowerInvariant()).Order());
    }

    [Fact]
    public async Task Only_a_hash_of_the_key_is_kept()
    {
        await using var house = await PairedHouse.Open();
        var cookies = new CookieContainer();
        await house.PairedPhone(cookies: cookies);
        var key = cookies.GetCookies(house.Lan).Single().Value;
        foreach (var file in house.Files())
            Assert.DoesNotContain(key, System.Text.Encoding.Latin1.GetString(await PairedHouse.Read(file)));
    }

    [Fact]
    public async Task A_code_is_used_once()
    {
        await using var house = await PairedHouse.Open();
        var code = (await house.Code()).Digits;
        Assert.Equal(HttpStatusCode.OK, (await PairedHouse.Pair(house.Phone(), code)).StatusCode);
        var second = await PairedHouse.Pair(house.Phone(), code);
        Assert.Equal(HttpStatusCode.BadRequest, second.StatusCode);
        Assert.Contains("used already", await PairedHouse.Why(second));
        Assert.Single(await house.Devices());
    }

    [Fact]
    public async Task A_code_runs_out()
    {
        await using var house = await PairedHouse.Open();
        var code = (await house.Code()).Digits;
        house.Clock.Pass(CodeDesk.Life);
        var late = await PairedHouse.Pair(house.Phone(), code);
        Assert.Contains("ran out", await PairedHouse.Why(late));
        Assert.Empty(await house.Devices());
    }

    [Fact]
    public async Task A_new_code_voids_the_old_one()
    {
        await using var house = await PairedHouse.Open();
        var (old, fresh) = ((await house.Code()).Digits, (await house.Code()).Digits);
        Assert.Equal(HttpStatusCode.BadRequest, (await PairedHouse.Pair(house.Phone(), old)).StatusCode);
        house.Clock.Pass(CodeDesk.LongestWait);
        Assert.Equal(HttpStatusCode.OK, (await PairedHouse.Pair(house.Phone(), fresh)).StatusCode);
    }

    [Fact]
    public async Task Five_wrong_tries_void_the_code_and_the_right_one_comes_too_late()
    {
        await using var house = await PairedHouse.Open();
        var code = (await house.Code()).Digits;
        var wrong = code[..7] + (code[7] == '0' ? '1' : '0');
        for (var left = 4; left >= 0; left--)
        {
            Assert.Contains(left == 0 ? "5 wrong ones" : left == 1 ? "1 try is left" : $"{left} tries are left", await PairedHouse.Why(await PairedHouse.Pair(house.Phone(), wrong)));
            house.Clock.Pass(CodeDesk.LongestWait);
        }
        Assert.Contains("5 wrong ones", await PairedHouse.Why(await PairedHouse.Pair(house.Phone(), code)));
        Assert.Empty(await house.Devices());
    }

    [Fact]
    [Truth(Grade.Published, "RFC 6585, 4: 429 Too Many Requests with Retry-After")]
    public async Task After_a_wrong_code_even_the_right_one_waits()
    {
        await using var house = await PairedHouse.Open();
        var code = (await house.Code()).Digits;
        await PairedHouse.Pair(house.Phone(), code == "00000000" ? "00000001" : "00000000");
        var early = await PairedHouse.Pair(house.Phone(), code);
        Assert.Equal(HttpStatusCode.TooManyRequests, early.StatusCode);
        house.Clock.Pass(early.Headers.RetryAfter!.Delta!.Value);
        Assert.Equal(HttpStatusCode.OK, (await PairedHouse.Pair(house.Phone(), code)).StatusCode);
    }

    [Theory]
    [InlineData("1234567", "x", "eight digits|8 digits")]
    [InlineData("12345678", "", "name of the device")]
    [InlineData("12345678", "a name that is far longer than any list of devices on a phone could show", "60 characters")]
    [InlineData("12345678", "two\nlines", "one line")]
    public async Task A_slip_is_told_and_costs_no_try(string typed, string name, string told)
    {
        await using var house = await PairedHouse.Open();
        await house.Code();
        var response = await PairedHouse.Pair(house.Phone(), typed, name);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        var why = await PairedHouse.Why(response);
        Assert.Contains(told.Split('|'), t => why.Contains(t, StringComparison.Ordinal));
        using var desk = house.AtTheDesk();
        Assert.Equal(CodeDesk.Tries, (await desk.GetFromJsonAsync("api/pairing/code", PairJson.Default.CodeState))!.TriesLeft);
    }

    [Fact]
    public async Task A_device_that_is_dropped_is_out_at_once_and_told_so()
    {
        await using var house = await PairedHouse.Open();
        var phone = await house.PairedPhone();
        using var desk = house.AtTheDesk();
        var device = Assert.Single(await house.Devices());
        Assert.Equal(HttpStatusCode.OK, (await desk.DeleteAsync($"api/devices/{device.Id}")).StatusCode);
        var after = await phone.GetAsync("api/vehicles");
        Assert.Equal(HttpStatusCode.Unauthorized, after.StatusCode);
        Assert.Contains("dropped", await PairedHouse.Why(after));
        Assert.Equal(HttpStatusCode.NotFound, (await desk.DeleteAsync($"api/devices/{device.Id}")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await PairedHouse.Pair(phone, (await house.Code()).Digits)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("api/vehicles")).StatusCode);
    }

    [Fact]
    public async Task A_device_is_renamed_and_paired_once_more_in_place_of_itself()
    {
        await using var house = await PairedHouse.Open();
        var phone = await house.PairedPhone();
        using var desk = house.AtTheDesk();
        var device = Assert.Single(await house.Devices());
        await desk.PutAsync($"api/devices/{device.Id}", JsonContent.Create(new DeviceName(" tablet "), PairJson.Default.DeviceName));
        Assert.Equal("tablet", Assert.Single(await house.Devices()).Name);
        await PairedHouse.Pair(phone, (await house.Code()).Digits, "the same, anew");
        Assert.Equal("the same, anew", Assert.Single(await house.Devices()).Name);
    }

    [Fact]
    public async Task A_paired_device_makes_codes_and_drops_others()
    {
        await using var house = await PairedHouse.Open();
        var (first, second) = (await house.PairedPhone("first"), await house.PairedPhone("second"));
        Assert.Equal(HttpStatusCode.OK, (await first.PostAsync("api/pairing/code", null)).StatusCode);
        var seen = await first.GetFromJsonAsync("api/devices", PairJson.Default.ImmutableArrayDeviceShown);
        Assert.Equal(["first"], seen.Where(d => d.ThisOne).Select(d => d.Name));
        Assert.Equal(HttpStatusCode.OK, (await first.DeleteAsync($"api/devices/{seen.Single(d => !d.ThisOne).Id}")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await second.GetAsync("api/devices")).StatusCode);
    }

    [Fact]
    public async Task When_it_was_last_seen_is_noted_to_the_minute_and_its_key_given_anew_each_day()
    {
        await using var house = await PairedHouse.Open();
        var phone = await house.PairedPhone();
        var paired = Assert.Single(await house.Devices()).SeenAt;
        house.Clock.Pass(TimeSpan.FromSeconds(30));
        Assert.False((await phone.GetAsync("api/vehicles")).Headers.Contains("Set-Cookie"));
        Assert.Equal(paired, Assert.Single(await house.Devices()).SeenAt);
        house.Clock.Pass(TimeSpan.FromDays(2));
        Assert.True((await phone.GetAsync("api/vehicles")).Headers.Contains("Set-Cookie"));
        Assert.Equal(house.Clock.GetUtcNow(), Assert.Single(await house.Devices()).SeenAt);
    }
}
