using Underturf.Networks.Wiring.HalfWave;
using Underturf.Quantities;

namespace Underturf.Simulation.Engines;

/// <summary>
/// Solves a laid-out circuit for what reaches a meter. The core's own solver is one; another, by other people and other methods, can take a
/// share of the readings, so that belief is not judged by the solver that it uses itself.
/// </summary>
public interface ICircuitEngine
{
    /// <summary>What a dead circuit reads between two nodes by direct current; its sources count as disconnected.</summary>
    /// <param name="drive">What the meter puts on its leads; nothing for a circuit without diodes, where it does not matter.</param>
    /// <returns>Ohms, infinite where no path leads through, or where the meter's own volts do not reach.</returns>
    Outcome<double> Ohms(DiodeNetwork circuit, int red, int black, TestDrive? drive);

    /// <returns>Volts that the meter shows between two nodes; none where an open separates them or cuts them off from every source.</returns>
    Outcome<double> Volts(DiodeNetwork circuit, int a, int b, FedMeter meter);

    /// <returns>Amperes that the meter shows of an element.</returns>
    Outcome<double> Amperes(DiodeNetwork circuit, int element, FedMeter meter);
}

/// <summary>A meter on a circuit that is on: the supply's frequency and what the meter makes of a waveform.</summary>
public readonly record struct FedMeter(double Hertz, MeterResponse Response);
