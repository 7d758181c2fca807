namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>
/// The junction of a diode, i = Is (exp(u / (n k T / q)) - 1): Shockley's equation (from memory), without breakdown, charge or self-heating.
/// </summary>
/// <param name="SaturationAmperes">Is, at the junction's own temperature; it grows about twofold every 10 K.</param>
/// <param name="EmissionFactor">n, between 1 and about 2.</param>
/// <param name="Kelvins">T, of the junction.</param>
public readonly record struct Junction(double SaturationAmperes, double EmissionFactor, double Kelvins);

/// <summary>A diode in a network.</summary>
/// <param name="Element">Its element, a resistor from anode to cathode with the diode's series ohms.</param>
public readonly record struct Diode(int Element, Junction Junction);
