using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Underturf.Quantities;

namespace Underturf.Server;

/// <summary>
/// The doors to the network: the page over HTTPS, whose log only paired devices read and add to; and, where the authority is our own, one over plain HTTP that gives out
/// its certificate and nothing else.
/// </summary>
internal sealed class NetworkHost : IAsyncDisposable
{
    private const string PortOption = "--network-port";

    private readonly NetworkOptions options;
    private readonly PairingSecret secret;
    private readonly Authority? authority;
    private readonly GivenCertificate? given;
    private readonly TimeProvider clock;
    private readonly List<WebApplication> doors = [];

    private NetworkHost(NetworkOptions options, PairingSecret secret, Authority? authority, GivenCertificate? given, TimeProvider clock) =>
        (this.options, this.secret, this.authority, this.given, this.clock) = (options, secret, authority, given, clock);

    /// <summary>Gets ready what the doors need: a certificate and the pairing secret.</summary>
    public static Outcome<NetworkHost> Open(NetworkOptions options, TimeProvider clock)
    {
        if (options.Certificate is null != options.Key is null)
        {
            return new Problem("the certificate", "and its key belong together, and one of them is missing", "Give both --certificate and --key, or neither");
        }

        if ((Unreachable(options) ?? ServerHost.Unusable(options.Port) ?? ServerHost.Unusable(options.AuthorityPort)) is { } hindered)
        {
            return hindered;
        }

        var drawn = PairingSecret.Of(options.Folder);
        return drawn.Succeeded ? Open(options, drawn.Value, clock) : drawn.Problem!;
    }

    /// <summary>An authority of our own certifies addresses of local networks only; a certificate that was given says itself what it is for.</summary>
    private static Problem? Unreachable(NetworkOptions options) =>
        options.Certificate is not null ? null
        : options.Address is { } named && !LocalAddresses.IsLocal(named) ? new Problem($"address {named}", "is of no local network", "Name one that begins with 10, 172.16 to 172.31 or 192.168, or give a certificate for it")
        : options.Address is null && LocalAddresses.Reachable().Count == 0 ? new Problem("this machine", "has no address on a local network", "Join the network that the phones are in, or name the address with --address")
        : null;

    private static Outcome<NetworkHost> Open(NetworkOptions options, PairingSecret secret, TimeProvider clock)
    {
        if (options.Certificate is { } certificate)
        {
            var read = GivenCertificate.Read(certificate, options.Key!, clock.GetUtcNow());
            return read.Succeeded ? new NetworkHost(options, secret, null, read.Value, clock) : read.Problem!;
        }

        var made = Authority.Of(options.Folder, clock.GetUtcNow());
        return made.Succeeded ? new NetworkHost(options, secret, made.Value, null, clock) : made.Problem!;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var door in doors)
        {
            await door.StopAsync(CancellationToken.None);
            await door.DisposeAsync();
        }

        authority?.Dispose();
        given?.Dispose();
    }

    public async Task<Problem?> StartAsync(string page, HeldLog? held, bool takesNotes, CancellationToken cancellation)
    {
        var secured = PageApp.Empty(kestrel => kestrel.ListenAnyIP(options.Port, Secure));
        secured.UseResponseCompression();
        secured.UseMiddleware<PairedOnly>(secret);
        PageApp.Map(secured, page, held, takesNotes);
        doors.Add(secured);
        var trouble = await ServerHost.StartAsync(secured, options.Port, PortOption, cancellation);
        if (trouble is null && authority is not null)
        {
            var open = PageApp.Empty(kestrel => kestrel.ListenAnyIP(options.AuthorityPort));
            AuthorityDoor.Map(open, authority);
            doors.Add(open);
            trouble = await ServerHost.StartAsync(open, options.AuthorityPort, PortOption, cancellation);
        }

        return trouble;
    }

    /// <summary>Where the doors are, once they are open.</summary>
    public NetworkDoors Doors
    {
        get
        {
            var host = options.Address?.ToString() ?? given?.Name ?? LocalAddresses.Reachable()[0].ToString();
            var page = new UriBuilder(Uri.UriSchemeHttps, host, PortOf(doors[0])) { Fragment = $"pair={secret.Text}" };
            var trust = authority is null ? null : new UriBuilder(Uri.UriSchemeHttp, host, PortOf(doors[1])).Uri;
            return new NetworkDoors(page.Uri, trust, authority?.Fingerprint);
        }
    }

    public void Tell() => options.Opened(Doors);

    private static int PortOf(WebApplication door) => new Uri(door.Urls.First().Replace("[::]", "localhost", StringComparison.Ordinal)).Port;

    private void Secure(ListenOptions listen)
    {
        var own = authority is null ? null : new ServerCertificate(authority, options.Address, clock);
        listen.UseHttps(https =>
        {
            https.ServerCertificateSelector = own is null ? null : (_, _) => own.Current;
            (https.ServerCertificate, https.ServerCertificateChain) = (given?.Certificate, given?.Chain);
        });
    }
}
