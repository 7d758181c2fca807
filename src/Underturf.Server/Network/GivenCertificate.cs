using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Underturf.Quantities;

namespace Underturf.Server;

/// <summary>A certificate that the user has from elsewhere, with the ones between it and its authority.</summary>
internal sealed record GivenCertificate(X509Certificate2 Certificate, X509Certificate2Collection Chain) : IDisposable
{
    /// <summary>The name to call the server by: the first that the certificate is for, unless it stands for many.</summary>
    public string? Name => Certificate.Extensions.OfType<X509SubjectAlternativeNameExtension>()
        .SelectMany(names => names.EnumerateDnsNames().Concat(names.EnumerateIPAddresses().Select(address => address.ToString())))
        .FirstOrDefault(name => !name.StartsWith('*'));

    public void Dispose()
    {
        Certificate.Dispose();
        Chain.ToList().ForEach(each => each.Dispose());
    }

    public static Outcome<GivenCertificate> Read(string certificate, string key, DateTimeOffset now)
    {
        if (new[] { certificate, key }.FirstOrDefault(path => !File.Exists(path)) is { } missing)
        {
            return new Problem(missing, "there is no such file", "Give the paths of the certificate and of its key, both as PEM");
        }

        try
        {
            var chain = new X509Certificate2Collection();
            chain.ImportFromPemFile(certificate);
            using var read = X509Certificate2.CreateFromPemFile(certificate, key);
            var own = X509CertificateLoader.LoadPkcs12(read.Export(X509ContentType.Pfx), null);
            return own.NotAfter <= now.LocalDateTime
                ? new Problem(certificate, $"ran out on {own.NotAfter.ToUniversalTime():yyyy-MM-dd}", "Renew it")
                : new GivenCertificate(own, chain);
        }
        catch (Exception error) when (error is CryptographicException or ArgumentException or IOException or UnauthorizedAccessException)
        {
            return new Problem(certificate, $"and its key {Path.GetFileName(key)} cannot be used: {error.Message.TrimEnd('.')}", "Give a certificate and the key that it was made for, both as PEM and without a password");
        }
    }
}
