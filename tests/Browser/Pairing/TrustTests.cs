using System.Diagnostics;
using System.Net;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Playwright;
using WitnessMark.Tests;
using WitnessMark.Web.Pairing.Trust;
using WitnessMark.Web.Tests;
using WitnessMark.Web.Tests.Pairing;

namespace WitnessMark.Browser.Pairing;

/// <summary>A browser in which the person has trusted the house's authority, as the page Trust says for Linux.</summary>
public sealed class TrustTests
{
    [Fact]
    [Truth(Grade.SecondImplementation, "Chromium's own certificate verifier with the authority in its store (NSS certutil)")]
    public async Task A_browser_that_trusts_the_authority_believes_the_house_and_nothing_else_that_it_signs()
    {
        await using var house = await PairedHouse.Open();
        var file = house.Files().Single(f => f.EndsWith("authority.pem", StringComparison.Ordinal));
        var home = Directory.CreateTempSubdirectory("wm-nss-");
        try
        {
            await Trust(home.FullName, file);
            using var playwright = await Playwright.CreateAsync();
            await using var browser = await playwright.Chromium.LaunchAsync(new()
            {
                ExecutablePath = "/usr/bin/chromium",
                Args = ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--host-resolver-rules=MAP * 127.0.0.1"],
                Env = new Dictionary<string, string>(Variables()) { ["HOME"] = home.FullName },
            });
            var page = await (await browser.NewContextAsync()).NewPageAsync();
            page.SetDefaultTimeout(60_000);
            await page.GotoAsync(new Uri(house.Lan, "trust").ToString());
            await page.Locator("h1").WaitForAsync();
            // Without trust there is no service worker, and so no app offline.
            Assert.True(await page.EvaluateAsync<bool>("isSecureContext && 'serviceWorker' in navigator"));

            using var authority = X509Certificate2.CreateFromPemFile(file);
            await using var posing = await Pose(authority, "bank.example.com");
            var refused = await Assert.ThrowsAsync<PlaywrightException>(() => page.GotoAsync($"https://bank.example.com:{posing.Port}/"));
            Assert.Contains("ERR_CERT_INVALID", refused.Message);
        }
        finally
        {
            home.Delete(recursive: true);
        }
    }

    static async Task Trust(string home, string certificate)
    {
        var store = Directory.CreateDirectory(Path.Combine(home, ".pki", "nssdb")).FullName;
        await Run("-d", $"sql:{store}", "-N", "--empty-password");
        await Run("-d", $"sql:{store}", "-A", "-n", "house", "-t", "C,,", "-i", certificate);
    }

    static async Task Run(params string[] args)
    {
        using var run = Process.Start(new ProcessStartInfo("certutil", args))!;
        await run.WaitForExitAsync();
        Assert.Equal(0, run.ExitCode);
    }

    /// <summary>A site that shows a certificate of the authority for a name which is not the house's.</summary>
    static async Task<Posing> Pose(X509Certificate2 authority, string name)
    {
        var port = HostProcess.FreePort();
        using var made = Certificates.Host(authority, [name], [], TimeProvider.System.GetUtcNow());
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.ConfigureKestrel(k => k.Listen(IPAddress.Loopback, port, l => l.UseHttps(X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pfx), null))));
        var app = builder.Build();
        app.MapGet("/", () => Results.Text("posing"));
        await app.StartAsync();
        return new(app, port);
    }

    sealed record Posing(WebApplication App, int Port) : IAsyncDisposable
    {
        public ValueTask DisposeAsync() => App.DisposeAsync();
    }

    static Dictionary<string, string> Variables() =>
        Environment.GetEnvironmentVariables().Cast<System.Collections.DictionaryEntry>().ToDictionary(e => (string)e.Key, e => (string?)e.Value ?? "");
}
