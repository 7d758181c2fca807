using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>What the worker is asked about where something lies.</summary>
/// <param name="Thing">Id of what is looked for.</param>
/// <param name="From">Where one stands; at the controller where nothing is said.</param>
public sealed record LocateAsk(string Thing, Position? From);
