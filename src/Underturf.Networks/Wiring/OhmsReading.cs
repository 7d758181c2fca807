using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>What an ohmmeter would show between two nodes.</summary>
public sealed class OhmsReading
{
    private readonly WiringNetwork network;
    private readonly double[] currents;

    internal OhmsReading(WiringNetwork network, double ohms, double residual, double[] currents)
    {
        this.network = network;
        this.currents = currents;
        Ohms = ohms;
        KirchhoffResidualAmperes = residual;
    }

    /// <summary>Resistance between the nodes; positive infinity where there is no path.</summary>
    public double Ohms { get; }

    public bool IsOpen => double.IsPositiveInfinity(Ohms);

    /// <summary>Largest imbalance of currents at a node when one ampere is sent through.</summary>
    public double KirchhoffResidualAmperes { get; }

    /// <summary>
    /// d(ohms)/d(ohms of the element): the square of the share of the current that flows through it, since the reading is the power at one
    /// ampere. Exact; zero for elements outside the path and when the reading is open.
    /// </summary>
    /// <returns>The derivative, or a problem for a perfect joint in a loop of perfect joints, whose share is not determined.</returns>
    public Outcome<double> Sensitivity(int element)
    {
        var share = currents[element];
        return double.IsNaN(share) ? Undetermined.JointInLoop(network, element) : share * share;
    }

    internal static OhmsReading Open(WiringNetwork network) => new(network, double.PositiveInfinity, 0, new double[network.ElementCount]);
}
