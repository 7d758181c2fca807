namespace Underturf.Standby;

/// <summary>Run the command line once: in which folder, with which arguments.</summary>
public sealed record Order(string Folder, IReadOnlyList<string> Arguments);
