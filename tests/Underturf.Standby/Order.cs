namespace Underturf.Standby;

/// <summary>Run the command line once: in which folder, with which arguments.</summary>
public sealed record Order(string Folder, IReadOnlyList<string> Arguments);

/// <summary>What a run left behind.</summary>
public sealed record Result(int Code, string Out, string Error);
