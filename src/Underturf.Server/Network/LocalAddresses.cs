using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Underturf.Server;

/// <summary>The names of this machine on its local network.</summary>
internal static class LocalAddresses
{
    /// <summary>Ranges that no address of the internet lies in: private ones, loopback, and those of a link.</summary>
    public static IReadOnlyList<IPNetwork> Ranges { get; } =
    [
        new(IPAddress.Parse("10.0.0.0"), 8), new(IPAddress.Parse("172.16.0.0"), 12), new(IPAddress.Parse("192.168.0.0"), 16), new(IPAddress.Parse("169.254.0.0"), 16),
        new(IPAddress.Parse("127.0.0.0"), 8), new(IPAddress.Parse("fc00::"), 7), new(IPAddress.Parse("fe80::"), 10), new(IPAddress.IPv6Loopback, 128),
    ];

    /// <summary>The machine's own name, and the one by which devices without a name server look for it.</summary>
    public static IReadOnlyList<string> Names
    {
        get
        {
            var plain = string.Concat(Environment.MachineName.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-')).Trim('-');
            return plain.Length == 0 ? ["localhost"] : ["localhost", plain, $"{plain}.local"];
        }
    }

    public static bool IsLocal(IPAddress address) => Ranges.Any(range => range.Contains(address));

    /// <summary>Addresses that devices of the network reach it at, wired and wireless ones first as the system lists them.</summary>
    public static IReadOnlyList<IPAddress> Reachable() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces()
            .Where(each => each.OperationalStatus == OperationalStatus.Up && each.NetworkInterfaceType != NetworkInterfaceType.Loopback)
            .OrderBy(each => each.GetIPProperties().GatewayAddresses.Count == 0)
            .SelectMany(each => each.GetIPProperties().UnicastAddresses)
            .Select(each => each.Address)
            .Where(address => address.AddressFamily == AddressFamily.InterNetwork && IsLocal(address)),
    ];
}
