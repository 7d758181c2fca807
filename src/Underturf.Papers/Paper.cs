namespace Underturf.Papers;

/// <summary>A paper to hand over.</summary>
public sealed record Paper(string FileName, string Title, ReadOnlyMemory<byte> Bytes);
