using System.Collections.Immutable;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using WitnessMark.Maths;

namespace WitnessMark.Web.Pairing.Trust;

/// <summary>The house's authority and the certificate that its host shows. Each lies with its key in one file, so the two can never part.</summary>
/// <param name="Authority">Without its key: once the host's certificate is signed it is not needed.</param>
/// <param name="Host">With its key.</param>
/// <param name="AuthorityIsNew">It was made just now: no phone trusts it yet.</param>
public sealed record HouseTrust(X509Certificate2 Authority, X509Certificate2 Host, bool AuthorityIsNew)
{
    const string AuthorityFile = "authority.pem", HostFile = "host.pem";

    /// <summary>A certificate with less than this left is made anew.</summary>
    static readonly TimeSpan Near = TimeSpan.FromDays(30);

    public string Fingerprint => Certificates.Fingerprint(Authority);

    public string Name => Authority.GetNameInfo(X509NameType.SimpleName, forIssuer: false);

    public ImmutableArray<string> Names => Certificates.AnswersTo(Host).Names;

    public ImmutableArray<IPAddress> Addresses => Certificates.AnswersTo(Host).Addresses;

    /// <summary>Reads what the folder holds, and makes what is missing, near its end, or for other addresses than the machine has now.</summary>
    /// <param name="addresses">Where the host is to be reached.</param>
    /// <exception cref="RefusedException">A key is open to others, or the authority's file cannot be read.</exception>
    public static HouseTrust Open(KeyFolder folder, string machine, IEnumerable<IPAddress> addresses, DateTimeOffset now)
    {
        var standing = Authorized(folder);
        var isNew = standing is null || standing.NotAfter < now.LocalDateTime + Near;
        if (isNew)
        {
            using var made = Certificates.Authority(machine, now);
            folder.Write(AuthorityFile, Pem(made), replace: standing is not null);
        }
        using var authority = (isNew ? Authorized(folder) : standing)!;
        if (authority.NotBefore > now.LocalDateTime)
            throw new RefusedException(new($"clock: this machine says {now:yyyy-MM-dd}, but the house's authority was made later, on {authority.NotBefore:yyyy-MM-dd}; set the clock right."));
        var limits = NameLimits.Of(authority) ?? throw Unreadable(folder);
        string[] names = [.. HouseNet.NamesOf(machine).Where(limits.Allow)];
        IPAddress[] places = [.. addresses.Append(IPAddress.Loopback).Append(IPAddress.IPv6Loopback).Distinct().Where(limits.Allow)];
        return new(X509CertificateLoader.LoadCertificate(authority.RawData), Hosted(folder, authority, names, places, now), isNew);
    }

    static X509Certificate2? Authorized(KeyFolder folder)
    {
        try
        {
            return folder.Read(AuthorityFile) is { } pem ? X509Certificate2.CreateFromPem(pem, pem) : null;
        }
        catch (Exception e) when (e is CryptographicException or ArgumentException)
        {
            throw Unreadable(folder);
        }
    }

    static X509Certificate2 Hosted(KeyFolder folder, X509Certificate2 authority, string[] names, IPAddress[] addresses, DateTimeOffset now)
    {
        if (Standing(folder) is { } standing && Fits(standing, authority, names, addresses, now)) return Usable(standing);
        using var made = Certificates.Host(authority, names, addresses, now);
        folder.Write(HostFile, Pem(made), replace: true);
        return Usable(made);
    }

    /// <summary>One that cannot be read is made anew: nobody has to trust it by itself.</summary>
    static X509Certificate2? Standing(KeyFolder folder)
    {
        try
        {
            return folder.Read(HostFile) is { } pem ? X509Certificate2.CreateFromPem(pem, pem) : null;
        }
        catch (Exception e) when (e is CryptographicException or ArgumentException)
        {
            return null;
        }
    }

    static bool Fits(X509Certificate2 host, X509Certificate2 authority, string[] names, IPAddress[] addresses, DateTimeOffset now)
    {
        var known = Certificates.AnswersTo(host);
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(authority);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.VerificationTime = now.LocalDateTime;
        return known.Names.ToHashSet().SetEquals(names) && known.Addresses.ToHashSet().SetEquals(addresses)
            && (host.NotAfter > now.LocalDateTime + Near || host.NotAfter == authority.NotAfter) && chain.Build(host);
    }

    /// <summary>Windows' TLS takes a key only out of a store of its own kind.</summary>
    static X509Certificate2 Usable(X509Certificate2 host) => X509CertificateLoader.LoadPkcs12(host.Export(X509ContentType.Pfx), null);

    static string Pem(X509Certificate2 certificate) =>
        certificate.ExportCertificatePem() + "\n" + certificate.GetECDsaPrivateKey()!.ExportPkcs8PrivateKeyPem() + "\n";

    static RefusedException Unreadable(KeyFolder folder) => new(new(
        $"key file: \"{folder.PathOf(AuthorityFile)}\" holds no authority of this house; put back the one that was kept with the records, or delete it, and every phone must trust the house anew."));
}
