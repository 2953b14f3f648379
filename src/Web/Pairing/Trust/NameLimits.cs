using System.Collections.Immutable;
using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace WitnessMark.Web.Pairing.Trust;

/// <summary>For which names and addresses an authority may speak: RFC 5280, 4.2.1.10, the permitted subtrees. A name stands for itself and all below it.</summary>
public sealed record NameLimits(ImmutableArray<string> Names, ImmutableArray<IPNetwork> Ranges)
{
    const string Oid = "2.5.29.30";

    static readonly Asn1Tag Permitted = new(TagClass.ContextSpecific, 0, isConstructed: true), DnsName = new(TagClass.ContextSpecific, 2), IpAddress = new(TagClass.ContextSpecific, 7);

    /// <summary>The house's own network and this machine.</summary>
    public static NameLimits Of(string machine) =>
        new([.. HouseNet.Endings.Concat(HouseNet.NamesOf(machine).Where(n => !HouseNet.Endings.Any(e => Under(n, e))))], HouseNet.Ranges);

    /// <summary>Those of an authority; null when it has none.</summary>
    public static NameLimits? Of(X509Certificate2 authority) =>
        authority.Extensions.FirstOrDefault(e => e.Oid?.Value == Oid) is { } limits ? Read(limits.RawData) : null;

    public bool Allow(string name) => Names.Any(n => Under(name, n));

    public bool Allow(IPAddress address) => Ranges.Any(r => r.Contains(address));

    /// <summary>Critical: who does not understand it must not trust the certificate.</summary>
    public X509Extension ToExtension()
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(Permitted))
        {
            foreach (var name in Names)
                using (writer.PushSequence()) writer.WriteCharacterString(UniversalTagNumber.IA5String, name, DnsName);
            foreach (var range in Ranges)
                using (writer.PushSequence()) writer.WriteOctetString([.. range.BaseAddress.GetAddressBytes(), .. Mask(range)], IpAddress);
        }
        return new(Oid, writer.Encode(), critical: true);
    }

    static NameLimits Read(byte[] encoded)
    {
        var (names, ranges) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<IPNetwork>());
        var subtrees = new AsnReader(encoded, AsnEncodingRules.DER).ReadSequence().ReadSequence(Permitted);
        while (subtrees.HasData)
        {
            var subtree = subtrees.ReadSequence();
            if (subtree.PeekTag() == DnsName) names.Add(subtree.ReadCharacterString(UniversalTagNumber.IA5String, DnsName));
            else if (subtree.ReadOctetString(IpAddress) is { Length: 8 or 32 } bytes)
                ranges.Add(new(new IPAddress(bytes.AsSpan(0, bytes.Length / 2)), bytes.Skip(bytes.Length / 2).Sum(b => System.Numerics.BitOperations.PopCount(b))));
        }
        return new(names.ToImmutable(), ranges.ToImmutable());
    }

    static byte[] Mask(IPNetwork range)
    {
        var mask = new byte[range.BaseAddress.GetAddressBytes().Length];
        for (var bit = 0; bit < range.PrefixLength; bit++) mask[bit / 8] |= (byte)(0x80 >> bit % 8);
        return mask;
    }

    static bool Under(string name, string ending) => name == ending || name.EndsWith("." + ending, StringComparison.Ordinal);
}
