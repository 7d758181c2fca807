using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.Simulation;

/// <summary>A property's network with one station switched on.</summary>
internal sealed class FedNetwork
{
    private const double OutputOhms = 1e-4;

    public FedNetwork(TrueNetwork property, string station, double volts, double sourceOhms)
    {
        Property = property;
        var circuit = property.CircuitOf(station);
        var wiring = circuit.Wiring.Clone();
        var hot = wiring.Node("hot");
        wiring.AddSource("supply", hot, property.Common(station), volts, sourceOhms);
        Output = wiring.AddResistor("station output", hot, property.Terminal(station), OutputOhms);
        Circuit = circuit.With(wiring);
    }

    public TrueNetwork Property { get; }

    public DiodeNetwork Circuit { get; }

    /// <summary>The element that a clamp closes round.</summary>
    public int Output { get; }
}
