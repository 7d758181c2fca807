namespace Underturf.Networks.Wiring;

/// <summary>A network in the steady state with every plunger where the volts at its coil leave it.</summary>
/// <param name="Network">The network with each coil's inductance as its plunger stands.</param>
/// <param name="Plungers">In the order of the coils given.</param>
/// <param name="Solves">How often the network was solved.</param>
public sealed record SettledCoils(WiringNetwork Network, AcSolution Solution, IReadOnlyList<Plunger> Plungers, int Solves);
