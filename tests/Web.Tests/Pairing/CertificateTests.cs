using System.Net;
using System.Security.Cryptography.X509Certificates;
using WitnessMark.Tests;
using WitnessMark.Web.Pairing.Trust;

namespace WitnessMark.Web.Tests.Pairing;

[Truth(Grade.SecondImplementation, "OpenSSL 3: verify -x509_strict and x509 -text on what was made here")]
public sealed class CertificateTests : IDisposable
{
    const string Machine = "bench-7";

    readonly OpenSsl _openssl = new();
    readonly DateTimeOffset _now = TimeProvider.System.GetUtcNow();

    [Fact]
    public async Task A_host_certificate_is_verified_for_its_names_and_addresses()
    {
        using var authority = Certificates.Authority(Machine, _now);
        using var host = Certificates.Host(authority, HouseNet.NamesOf(Machine), [IPAddress.Parse("192.168.1.20"), IPAddress.Parse("fd00::20"), IPAddress.Loopback], _now);
        foreach (var name in (string[])["bench-7", "bench-7.local", "bench-7.lan", "bench-7.home.arpa", "localhost"])
            Assert.Equal(0, (await Verify(authority, host, "-verify_hostname", name)).Code);
        foreach (var ip in (string[])["192.168.1.20", "fd00::20", "127.0.0.1"])
            Assert.Equal(0, (await Verify(authority, host, "-verify_ip", ip)).Code);
        Assert.NotEqual(0, (await Verify(authority, host, "-verify_ip", "192.168.1.21")).Code);
        Assert.NotEqual(0, (await Verify(authority, host, "-verify_hostname", "bench-8.local")).Code);
    }

    [Theory]
    [InlineData("example.com", null)]
    [InlineData("local.example.com", null)]
    [InlineData("notlocal", null)]
    [InlineData(null, "8.8.8.8")]
    [InlineData(null, "172.32.0.1")]
    [InlineData(null, "2001:db8::1")]
    [Truth(Grade.Published, "RFC 5280, 4.2.1.10: a name outside the permitted subtrees makes the certificate invalid")]
    public async Task The_authority_cannot_speak_for_anything_on_the_internet(string? name, string? address)
    {
        using var authority = Certificates.Authority(Machine, _now);
        using var foreign = Certificates.Host(authority, name is null ? [] : [name], address is null ? [] : [IPAddress.Parse(address)], _now);
        var (code, said) = await Verify(authority, foreign);
        Assert.NotEqual(0, code);
        Assert.Contains("permitted subtree violation", said);
    }

    [Fact]
    public async Task The_authority_cannot_make_another_authority()
    {
        using var authority = Certificates.Authority(Machine, _now);
        using var own = Certificates.Authority("other-9", _now);
        var request = new CertificateRequest(own.SubjectName, own.PublicKey, System.Security.Cryptography.HashAlgorithmName.SHA256);
        foreach (var extension in own.Extensions) request.CertificateExtensions.Add(extension);
        using var under = request.Create(authority, authority.NotBefore, _now.AddDays(30), [1, 2, 3]);
        using var underKeyed = under.CopyWithPrivateKey(own.GetECDsaPrivateKey()!);
        using var host = Certificates.Host(underKeyed, ["a.local"], [], _now);
        var (code, said) = await _openssl.Run("verify", "-CAfile", _openssl.Write("a.pem", authority), "-untrusted", _openssl.Write("u.pem", under), _openssl.Write("h.pem", host));
        Assert.NotEqual(0, code);
        Assert.Contains("path length constraint exceeded", said);
    }

    [Fact]
    public async Task The_limits_are_written_as_the_standard_says()
    {
        using var authority = Certificates.Authority(Machine, _now);
        var (_, text) = await _openssl.Run("x509", "-in", _openssl.Write("a.pem", authority), "-noout", "-text");
        foreach (var line in (string[])
            ["CA:TRUE, pathlen:0", "X509v3 Name Constraints: critical", "DNS:local", "DNS:lan", "DNS:home.arpa", "DNS:localhost", "DNS:bench-7", "IP:10.0.0.0/255.0.0.0",
             "IP:172.16.0.0/255.240.0.0", "IP:192.168.0.0/255.255.0.0", "IP:127.0.0.0/255.0.0.0", "IP:FC00:0:0:0:0:0:0:0/FE00:0:0:0:0:0:0:0", "IP:FE80:0:0:0:0:0:0:0/FFC0:0:0:0:0:0:0:0",
             "Certificate Sign", "prime256v1", "ecdsa-with-SHA256"])
            Assert.Contains(line, text);
        Assert.DoesNotContain("CRL Sign", text);
    }

    [Fact]
    public async Task A_host_certificate_lives_397_days_at_most_and_is_for_servers_alone()
    {
        using var authority = Certificates.Authority(Machine, _now);
        using var host = Certificates.Host(authority, ["a.local"], [], _now);
        Assert.InRange((host.NotAfter - host.NotBefore).TotalDays, 300, 397);
        var (_, text) = await _openssl.Run("x509", "-in", _openssl.Write("h.pem", host), "-noout", "-text");
        Assert.Contains("CA:FALSE", text);
        Assert.Contains("TLS Web Server Authentication", text);
        Assert.DoesNotContain("Certificate Sign", text);
        Assert.Equal(0, (await Verify(authority, host, "-purpose", "sslserver")).Code);
        Assert.NotEqual(0, (await Verify(authority, host, "-purpose", "sslclient")).Code);
    }

    [Fact]
    public async Task The_fingerprint_is_the_one_that_others_show()
    {
        using var authority = Certificates.Authority(Machine, _now);
        var (_, said) = await _openssl.Run("x509", "-in", _openssl.Write("a.pem", authority), "-noout", "-fingerprint", "-sha256");
        Assert.Equal(said.Split('=')[1].Trim(), Certificates.Fingerprint(authority));
    }

    [Theory]
    [InlineData("bench-7", true)]
    [InlineData("pc2", true)]
    [InlineData("shed.example.com", true)]
    [InlineData("com", false)]
    [InlineData("Workshop", false)]
    [InlineData("xn--p1ai", false)]
    [InlineData("bad_name!", false)]
    [Truth(Grade.Published, "RFC 3696, 2: top-level domain names are not all-numeric, and ICANN takes ASCII ones of letters alone")]
    public void A_machines_bare_name_is_allowed_only_if_it_can_be_no_top_level_domain(string machine, bool allowed) =>
        Assert.Equal(allowed, NameLimits.Of(machine).Allow(machine.ToLowerInvariant()));

    [Fact]
    public void The_limits_are_read_back_from_an_authority()
    {
        using var authority = Certificates.Authority(Machine, _now);
        var (written, read) = (NameLimits.Of(Machine), NameLimits.Of(authority)!);
        Assert.Equal([.. written.Names], read.Names);
        Assert.Equal([.. written.Ranges], read.Ranges);
    }

    Task<(int Code, string Said)> Verify(X509Certificate2 authority, X509Certificate2 host, params string[] more) =>
        _openssl.Run(["verify", "-x509_strict", "-CAfile", _openssl.Write("a.pem", authority), .. more, _openssl.Write("h.pem", host)]);

    public void Dispose() => _openssl.Dispose();
}
