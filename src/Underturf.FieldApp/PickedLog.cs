using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>A log file that the user chose, or what kept it from being read.</summary>
public sealed record PickedLog(string Name, Outcome<ReadOnlyMemory<byte>> Bytes);
