using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Underturf.Server;

/// <summary>The certificate that the server shows: of its authority, made anew well before it runs out and whenever the machine has another address.</summary>
internal sealed class ServerCertificate(Authority authority, IPAddress? named, TimeProvider clock)
{
    /// <summary>A phone that comes back after a month shall not meet one that is about to run out.</summary>
    private const int RenewDays = 30;

    private readonly Lock alone = new();
    private IReadOnlyList<IPAddress> addresses = [];
    private X509Certificate2? current;

    public X509Certificate2 Current
    {
        get
        {
            lock (alone)
            {
                var (now, here) = (clock.GetUtcNow(), (IReadOnlyList<IPAddress>)[IPAddress.Loopback, .. named is null ? [] : new[] { named }, .. LocalAddresses.Reachable()]);
                if (current is null || current.NotAfter < now.AddDays(RenewDays).LocalDateTime || !here.SequenceEqual(addresses))
                {
                    // The one before may still be in use by a connection, so it is left to the collector.
                    (current, addresses) = (authority.Certify(LocalAddresses.Names, here, now), here);
                }

                return current;
            }
        }
    }
}
