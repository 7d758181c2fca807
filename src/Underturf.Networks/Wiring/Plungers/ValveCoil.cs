namespace Underturf.Networks.Wiring;

/// <summary>A coil with a plunger: its inductance rises when the plunger is in, so it takes less current to hold than to pull in.</summary>
/// <param name="Element">The coil's element.</param>
/// <param name="InrushHenries">Plunger out.</param>
/// <param name="HoldingHenries">Plunger in.</param>
/// <param name="PullInVolts">Volts at the coil, plunger out, that pull it in.</param>
/// <param name="DropOutVolts">Volts below which it falls out again, and below which it does not move at all.</param>
public readonly record struct ValveCoil(int Element, double InrushHenries, double HoldingHenries, double PullInVolts, double DropOutVolts);
