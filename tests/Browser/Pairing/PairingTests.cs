using Microsoft.Playwright;
using StbImageSharp;
using WitnessMark.Tests;
using WitnessMark.Web.Pairing;
using WitnessMark.Web.Tests.Pairing;
using ZXing;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Pairing;

/// <summary>A desk and a phone, each a browser of its own, at one host.</summary>
public sealed class PairingTests(Chromium chromium)
{
    [Fact]
    [Truth(Grade.SecondImplementation, "ZXing (Apache-2.0) reads from the screen what QRCoder (MIT) encoded; Chromium's own cookie, CSP and Fetch Metadata rules")]
    public async Task A_phone_reads_the_code_of_the_desk_is_paired_works_and_is_dropped()
    {
        await using var house = await PairedHouse.Open();
        await using var desk = await chromium.Visit(house.Desk, "devices");
        await desk.Button("Make a code").ClickAsync();
        var digits = (await desk.Page.Locator(".digits").InnerTextAsync()).Replace("\u00a0", "");
        var address = await Read(desk.Page.GetByRole(AriaRole.Img, new() { Name = "The address with the code, for a camera" }));
        Assert.Equal($"{house.Lan}pair#{digits}", address);
        await desk.Whole("pairing-devices-code");

        await using var phone = await Phone(house, new Uri(address).PathAndQuery + new Uri(address).Fragment);
        await Expect(phone.Page.Locator("#pair-code")).ToHaveValueAsync(digits);
        Assert.DoesNotContain('#', phone.Page.Url);
        await phone.Page.Locator("#pair-name").FillAsync("Phone in the shed");
        await phone.Picture("pairing-pair-phone");
        await phone.Button("Pair this device").ClickAsync();
        await Expect(phone.Page.Locator("h2")).ToHaveTextAsync("Paired");
        Assert.Equal("", await phone.Page.EvaluateAsync<string>("document.cookie"));
        await Expect(desk.Page.Locator(".devices")).ToContainTextAsync("Phone in the shed");
        await Expect(desk.Page.GetByText("Phone in the shed is paired.")).ToBeVisibleAsync();

        await phone.Walk("");
        await Expect(phone.Page.Locator("#first-name")).ToBeVisibleAsync();
        await phone.Walk("devices");
        await Expect(phone.Page.Locator(".devices")).ToContainTextAsync("(this one)");

        await desk.Button("Drop Phone in the shed …").ClickAsync();
        await desk.Button("Drop Phone in the shed").ClickAsync();
        await Expect(desk.Page.Locator(".devices li")).ToHaveCountAsync(0);
        await phone.Go("");
        await Expect(phone.Page.Locator(".unpaired")).ToContainTextAsync("dropped");
        await phone.Picture("pairing-dropped-phone");
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Pair this device" }).ClickAsync();
        await Expect(phone.Page.Locator("h1")).ToHaveTextAsync("Pair this device");
        Assert.Empty(desk.Complaints.Concat(phone.Complaints));
    }

    [Fact]
    public async Task A_wrong_code_and_one_that_ran_out_are_told()
    {
        await using var house = await PairedHouse.Open();
        var code = (await house.Code()).Digits;
        await using var phone = await Phone(house, "pair");
        await Try(phone, code == "11111111" ? "22222222" : "11111111");
        await Expect(phone.Page.Locator(".refusal")).ToContainTextAsync("4 tries are left");
        await Try(phone, code);
        await Expect(phone.Page.Locator(".refusal")).ToContainTextAsync("wait a little");
        house.Clock.Pass(CodeDesk.Life);
        await Try(phone, code);
        await Expect(phone.Page.Locator(".refusal")).ToContainTextAsync("ran out");
        await phone.Go("");
        await Expect(phone.Page.Locator(".unpaired")).ToContainTextAsync("not paired");
        Assert.Empty(await house.Devices());
        await Try(phone, (await house.Code()).Digits, open: true);
        await Expect(phone.Page.Locator("h2")).ToHaveTextAsync("Paired");
        Assert.Empty(phone.Complaints);
    }

    [Fact]
    public async Task The_page_trust_gives_the_authority_to_anybody_and_shows_the_fingerprint_of_the_desk()
    {
        await using var house = await PairedHouse.Open();
        await using var desk = await chromium.Visit(house.Desk, "devices");
        var told = await desk.Page.Locator(".fingerprint").InnerTextAsync();
        await using var phone = await Phone(house, "trust");
        Assert.Equal(told, await phone.Page.Locator(".fingerprint").InnerTextAsync());
        var file = await phone.Page.RunAndWaitForDownloadAsync(() => phone.Page.GetByRole(AriaRole.Link, new() { Name = "Fetch the authority's certificate" }).ClickAsync());
        Assert.Equal("witness-mark-authority.crt", file.SuggestedFilename);
        var hash = System.Security.Cryptography.SHA256.HashData(await File.ReadAllBytesAsync(await file.PathAsync()));
        Assert.Equal(string.Concat(told.Where(char.IsAsciiHexDigit)), Convert.ToHexString(hash));
        using var http = house.Phone();
        Assert.Equal("application/x-x509-ca-cert", (await http.GetAsync("api/pairing/authority.crt")).Content.Headers.ContentType?.MediaType);
        Assert.Empty(desk.Complaints.Concat(phone.Complaints));
    }

    Task<Visit> Phone(PairedHouse house, string path) => chromium.Visit(house.Lan, path, 360, 740, ColorScheme.Dark, touch: true);

    static async Task Try(Visit phone, string code, bool open = false)
    {
        if (open) await phone.Go("pair");
        await phone.Page.Locator("#pair-code").FillAsync(code);
        await phone.Page.Locator("#pair-name").FillAsync("Phone");
        await phone.Button("Pair this device").ClickAsync();
    }

    static async Task<string> Read(ILocator picture)
    {
        var image = ImageResult.FromMemory(await picture.ScreenshotAsync(), ColorComponents.RedGreenBlue);
        return new ZXing.QrCode.QRCodeReader().decode(new(new ZXing.Common.HybridBinarizer(new RGBLuminanceSource(image.Data, image.Width, image.Height)))).Text;
    }
}
