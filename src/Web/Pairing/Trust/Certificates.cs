using System.Collections.Immutable;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace WitnessMark.Web.Pairing.Trust;

/// <summary>Makes the two certificates: the authority's, which signs itself, and the host's, which the authority signs. ECDSA on P-256, SHA-256.</summary>
public static class Certificates
{
    const string ServerAuthentication = "1.3.6.1.5.5.7.3.1";

    /// <summary>A phone that has trusted it should not be asked again for as long as the restoration lasts.</summary>
    const int AuthorityYears = 10;

    /// <summary>Day before to last day, below the 398 days that browsers accept of a host's certificate.</summary>
    public const int HostDays = 397;

    /// <summary>A phone's clock may be behind this one's.</summary>
    static readonly TimeSpan ClockSlack = TimeSpan.FromDays(1);

    /// <param name="machine">Its host name: told in the authority's name and allowed to it.</param>
    public static X509Certificate2 Authority(string machine, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest(Named($"Witness Mark authority of {machine}, {now:yyyy-MM-dd}"), key, HashAlgorithmName.SHA256);
        var own = new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false);
        Add(request,
            new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: true, pathLengthConstraint: 0, critical: true),
            new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, critical: true),
            new X509EnhancedKeyUsageExtension([new(ServerAuthentication)], critical: false),
            NameLimits.Of(machine).ToExtension(), own);
        return request.CreateSelfSigned(Second(now - ClockSlack), Second(now).AddYears(AuthorityYears));
    }

    /// <param name="authority">With its private key.</param>
    public static X509Certificate2 Host(X509Certificate2 authority, IEnumerable<string> names, IEnumerable<IPAddress> addresses, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest(Named("Witness Mark host"), key, HashAlgorithmName.SHA256);
        var known = new SubjectAlternativeNameBuilder();
        foreach (var name in names) known.AddDnsName(name);
        foreach (var address in addresses) known.AddIpAddress(address);
        Add(request,
            new X509BasicConstraintsExtension(certificateAuthority: false, hasPathLengthConstraint: false, pathLengthConstraint: 0, critical: true),
            new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true),
            new X509EnhancedKeyUsageExtension([new(ServerAuthentication)], critical: false),
            known.Build(critical: false),
            new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false),
            X509AuthorityKeyIdentifierExtension.CreateFromCertificate(authority, includeKeyIdentifier: true, includeIssuerAndSerial: false));
        var from = Second(now - ClockSlack);
        var to = from.AddDays(HostDays) is var wanted && wanted < authority.NotAfter ? wanted : new DateTimeOffset(authority.NotAfter);
        using var signed = request.Create(authority, from, to, Serial());
        return signed.CopyWithPrivateKey(key);
    }

    /// <summary>The names and addresses that a certificate answers to.</summary>
    public static (ImmutableArray<string> Names, ImmutableArray<IPAddress> Addresses) AnswersTo(X509Certificate2 host) =>
        host.Extensions.OfType<X509SubjectAlternativeNameExtension>().FirstOrDefault() is { } known
            ? ([.. known.EnumerateDnsNames()], [.. known.EnumerateIPAddresses()]) : ([], []);

    /// <summary>SHA-256 of the whole certificate in pairs, as phones and browsers show it.</summary>
    public static string Fingerprint(X509Certificate2 certificate) =>
        string.Join(':', certificate.GetCertHash(HashAlgorithmName.SHA256).Select(b => $"{b:X2}"));

    static X500DistinguishedName Named(string name)
    {
        var builder = new X500DistinguishedNameBuilder();
        // RFC 5280, upper bound of a common name.
        builder.AddCommonName(name.Length > 64 ? name[..64] : name);
        return builder.Build();
    }

    static void Add(CertificateRequest request, params ReadOnlySpan<X509Extension> extensions)
    {
        foreach (var extension in extensions) request.CertificateExtensions.Add(extension);
    }

    /// <summary>Sixteen random bytes, positive and not nought (RFC 5280, 4.1.2.2).</summary>
    static byte[] Serial()
    {
        var serial = RandomNumberGenerator.GetBytes(16);
        serial[0] = (byte)(serial[0] & 0x7F | 0x40);
        return serial;
    }

    /// <summary>Certificates know no parts of a second.</summary>
    static DateTimeOffset Second(DateTimeOffset at) => DateTimeOffset.FromUnixTimeSeconds(at.ToUnixTimeSeconds());
}
