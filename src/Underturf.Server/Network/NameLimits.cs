using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Underturf.Server;

/// <summary>
/// Names that an authority may certify and no others (name constraints, RFC 5280, section 4.2.1.10): whoever stole its key could not pass for any site of
/// the internet before the phones that trust it.
/// </summary>
internal static class NameLimits
{
    private const string Identifier = "2.5.29.30";
    private const int DnsName = 2, Address = 7;

    public static X509Extension To(IEnumerable<string> names, IEnumerable<IPNetwork> ranges)
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(new Asn1Tag(TagClass.ContextSpecific, 0)))
        {
            foreach (var name in names)
            {
                using (writer.PushSequence())
                {
                    writer.WriteCharacterString(UniversalTagNumber.IA5String, name, new Asn1Tag(TagClass.ContextSpecific, DnsName));
                }
            }

            foreach (var range in ranges)
            {
                using (writer.PushSequence())
                {
                    writer.WriteOctetString([.. range.BaseAddress.GetAddressBytes(), .. Mask(range)], new Asn1Tag(TagClass.ContextSpecific, Address));
                }
            }
        }

        return new X509Extension(Identifier, writer.Encode(), critical: true);
    }

    private static byte[] Mask(IPNetwork range)
    {
        var mask = new byte[range.BaseAddress.GetAddressBytes().Length];
        for (var bit = 0; bit < range.PrefixLength; bit++)
        {
            mask[bit / 8] |= (byte)(0x80 >> (bit % 8));
        }

        return mask;
    }
}
