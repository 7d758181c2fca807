using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Underturf.Quantities;

namespace Underturf.Server;

/// <summary>
/// The certificate authority of one data folder: made once, trusted by the phones of one's own. It certifies this machine's names on the local network and can
/// certify nothing else.
/// </summary>
internal sealed class Authority : IDisposable
{
    private const int Years = 10;

    /// <summary>How long a certificate of the server holds; phones refuse long ones.</summary>
    private const int LeafDays = 90;

    /// <summary>A phone's clock may be behind.</summary>
    private static readonly TimeSpan early = TimeSpan.FromDays(1);

    private readonly X509Certificate2 certificate;

    private Authority(X509Certificate2 certificate) => this.certificate = certificate;

    /// <summary>What phones are given to trust.</summary>
    public byte[] Bytes => certificate.RawData;

    public string Fingerprint => string.Join(':', Convert.ToHexString(SHA256.HashData(certificate.RawData)).Chunk(2).Select(pair => new string(pair)));

    public void Dispose() => certificate.Dispose();

    /// <summary>The authority of a folder, made where there is none or where it has run out.</summary>
    public static Outcome<Authority> Of(string folder, DateTimeOffset now)
    {
        var (kept, key) = (Path.Combine(folder, "authority.crt"), Path.Combine(folder, "authority.key"));
        try
        {
            if (File.Exists(kept) && X509Certificate2.CreateFromPemFile(kept, key) is var found && found.NotAfter > now.AddDays(LeafDays).LocalDateTime)
            {
                return new Authority(found);
            }

            var made = Make(now);
            OwnFile.Write(key, made.GetECDsaPrivateKey()!.ExportPkcs8PrivateKeyPem());
            OwnFile.Write(kept, made.ExportCertificatePem());
            return new Authority(made);
        }
        catch (Exception error) when (error is CryptographicException or IOException or UnauthorizedAccessException)
        {
            return new Problem(kept, $"cannot be used: {error.Message.TrimEnd('.')}", "Take both files of the authority away and start again; phones then have to trust the new one");
        }
    }

    /// <summary>A certificate for this machine, under those names and addresses.</summary>
    public X509Certificate2 Certify(IEnumerable<string> names, IEnumerable<IPAddress> addresses, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Underturf", key, HashAlgorithmName.SHA256);
        var called = new SubjectAlternativeNameBuilder();
        names.ToList().ForEach(called.AddDnsName);
        addresses.ToList().ForEach(called.AddIpAddress);
        request.CertificateExtensions.Add(called.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: false, hasPathLengthConstraint: false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], critical: false));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(certificate, includeKeyIdentifier: true, includeIssuerAndSerial: false));
        using var bare = request.Create(certificate, now - early, now.AddDays(LeafDays), RandomNumberGenerator.GetBytes(16));
        using var whole = bare.CopyWithPrivateKey(key);
        // Some systems serve only with a key that was read in, not with one that was just made.
        return X509CertificateLoader.LoadPkcs12(whole.Export(X509ContentType.Pfx), null);
    }

    private static X509Certificate2 Make(DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN=Underturf on {LocalAddresses.Names[^1]}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: true, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, critical: true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(NameLimits.To(LocalAddresses.Names, LocalAddresses.Ranges));
        return request.CreateSelfSigned(now - early, now.AddYears(Years));
    }
}
