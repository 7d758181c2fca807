using System.Net;

namespace Underturf.Server;

/// <summary>How the page is served to other devices of the network, beside this machine.</summary>
/// <param name="Folder">Where the authority and the pairing secret are kept from one start to the next.</param>
/// <param name="Port">Port of the page over HTTPS; 0 lets the system choose one.</param>
/// <param name="AuthorityPort">Port at which phones fetch the authority's certificate; 0 as above.</param>
/// <param name="Opened">Called once with what a person has to know.</param>
public sealed record NetworkOptions(string Folder, int Port, int AuthorityPort, Action<NetworkDoors> Opened)
{
    /// <summary>The address by which other devices reach this machine; found out where nothing is given.</summary>
    public IPAddress? Address { get; init; }

    /// <summary>A certificate of one's own with its chain, as PEM; an authority of our own makes one where nothing is given.</summary>
    public string? Certificate { get; init; }

    /// <summary>The key of that certificate, as PEM.</summary>
    public string? Key { get; init; }
}

/// <summary>Where other devices find the page.</summary>
/// <param name="Page">With the pairing secret in its fragment, which no browser sends to a server.</param>
/// <param name="Authority">Where a phone is shown how to trust the server; nothing where the certificate was given.</param>
/// <param name="Fingerprint">SHA-256 of the authority's certificate, to compare on the phone.</param>
public sealed record NetworkDoors(Uri Page, Uri? Authority, string? Fingerprint);
