namespace Underturf.Server;

/// <summary>What to serve and where.</summary>
/// <param name="Port">Port on loopback; 0 lets the system choose one.</param>
/// <param name="OfferedLog">Path of the log that the page opens first; null offers none.</param>
/// <param name="Started">Called once with the address that the page is at.</param>
public sealed record ServeOptions(int Port, string? OfferedLog, Action<Uri> Started)
{
    /// <summary>Whether what pages note is added to the log.</summary>
    public bool TakesNotes { get; init; }

    /// <summary>How other devices reach the page; nothing where it is for this machine only.</summary>
    public NetworkOptions? Network { get; init; }
}
