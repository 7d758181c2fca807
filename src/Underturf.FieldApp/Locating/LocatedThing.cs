using Underturf.FieldLog;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Where something lies, and its heat to lay over the plan; nothing to lay where there is no plan.</summary>
public sealed record LocatedThing(LocationAnswer Answer, HeatLayer? Heat);

/// <summary>A picture of likely ground that lies on the plan, north up.</summary>
/// <param name="Picture">A PNG file.</param>
/// <param name="NorthWest">Its corner.</param>
public sealed record HeatLayer(byte[] Picture, Position NorthWest, double MetresPerPixel);
