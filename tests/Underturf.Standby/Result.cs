namespace Underturf.Standby;

/// <summary>What a run left behind.</summary>
public sealed record Result(int Code, string Out, string Error);
