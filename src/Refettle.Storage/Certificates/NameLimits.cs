using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Refettle.Storage.Certificates;

/// <summary>What an authority may vouch for: RFC 5280 §4.2.1.10. One that is stolen is then of no use for any other site.</summary>
internal static class NameLimits
{
    private const string Oid = "2.5.29.30";
    private const int DnsName = 2;
    private const int Address = 7;

    /// <summary>The addresses of home networks (RFC 1918, RFC 3927), this machine itself, and given
    /// names with what lies below them.</summary>
    private static readonly (string Network, string Mask)[] _home =
        [("10.0.0.0", "255.0.0.0"), ("172.16.0.0", "255.240.0.0"), ("192.168.0.0", "255.255.0.0"), ("169.254.0.0", "255.255.0.0"),
            ("127.0.0.0", "255.0.0.0")];

    /// <param name="addresses">Addresses beyond those of home networks.</param>
    public static X509Extension To(IEnumerable<string> names, IEnumerable<IPAddress> addresses)
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(new Asn1Tag(TagClass.ContextSpecific, 0)))
        {
            foreach (var name in names)
                Subtree(writer,
                    () => writer.WriteCharacterString(UniversalTagNumber.IA5String, name, new Asn1Tag(TagClass.ContextSpecific, DnsName)));
            foreach (var (network, mask) in _home)
                Subtree(writer,
                    () => writer.WriteOctetString([.. IPAddress.Parse(network).GetAddressBytes(),
                        .. IPAddress.Parse(mask).GetAddressBytes()], new Asn1Tag(TagClass.ContextSpecific, Address)));
            foreach (var address in addresses)
                Subtree(writer,
                    () => writer.WriteOctetString([.. address.GetAddressBytes(), 255, 255, 255, 255],
                        new Asn1Tag(TagClass.ContextSpecific, Address)));
        }

        return new(Oid, writer.Encode(), critical: true);
    }

    private static void Subtree(AsnWriter writer, Action name)
    {
        using (writer.PushSequence())
            name();
    }
}
