using Underturf.Networks.Wiring;

namespace Underturf.Simulation;

/// <summary>A property's network with one station switched on.</summary>
internal sealed class FedNetwork
{
    private const double OutputOhms = 1e-4;

    private readonly TrueNetwork property;
    private readonly AcSolution? solution;
    private readonly int output;

    public FedNetwork(TrueNetwork property, string station, double volts, double sourceOhms, double hertz)
    {
        this.property = property;
        var network = property.Network.Clone();
        var hot = network.Node("hot");
        network.AddSource("supply", hot, property.Common, volts, sourceOhms);
        output = network.AddResistor("station output", hot, property.Terminal(station), OutputOhms);
        var solved = network.SolveAc(hertz);
        solution = solved.Succeeded ? solved.Value : throw new InvalidOperationException(solved.Problem!.ToString());
    }

    /// <summary>Volts between two nodes; none where an open separates them.</summary>
    public double Volts(Func<TrueNetwork, (int A, int B)> across)
    {
        var (a, b) = across(property);
        var reading = solution!.VoltsReading(a, b);
        return reading.Succeeded && !solution.IsFloating(a) && !solution.IsFloating(b) ? reading.Value.Magnitude : 0;
    }

    public double Amperes() => solution!.AmperesReading(output).Value.Magnitude;
}
