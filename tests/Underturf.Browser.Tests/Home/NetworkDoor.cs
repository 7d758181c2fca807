using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography.X509Certificates;
using Underturf.Server;

namespace Underturf.Browser;

/// <summary>A log served to the network from a folder of its own, and clients that trust its authority and nobody else.</summary>
internal sealed class NetworkDoor : IAsyncDisposable
{
    private NetworkDoor(ServedLog served, NetworkDoors doors) => (Served, Doors) = (served, doors);

    public ServedLog Served { get; }

    public NetworkDoors Doors { get; }

    /// <summary>The page by the one address that every machine has.</summary>
    public Uri Page => new UriBuilder(Doors.Page) { Host = "127.0.0.1", Fragment = "" }.Uri;

    public Uri Authority => new UriBuilder(Doors.Authority!) { Host = "127.0.0.1" }.Uri;

    public string Secret => Doors.Page.Fragment["#pair=".Length..];

    public static async Task<NetworkDoor> OpenAsync(string log, string folder, string? certificate = null, string? key = null)
    {
        var told = new TaskCompletionSource<NetworkDoors>();
        var served = await ServedLog.StartAsync(log, takesNotes: true, network: new NetworkOptions(folder, 0, 0, told.SetResult) { Address = certificate is null ? IPAddress.Loopback : null, Certificate = certificate, Key = key });
        return new NetworkDoor(served, await told.Task);
    }

    public static HttpClient Client(X509Certificate2 trusted, string? secret = null)
    {
        var handler = new SocketsHttpHandler();
        handler.SslOptions.CertificateChainPolicy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck, CustomTrustStore = { trusted } };
        var client = new HttpClient(handler);
        client.DefaultRequestHeaders.Authorization = secret is null ? null : new AuthenticationHeaderValue("Bearer", secret);
        return client;
    }

    public ValueTask DisposeAsync() => Served.DisposeAsync();
}
