using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>What must hold before a network is solved; every problem names the element or node.</summary>
internal static class WiringCheck
{
    private const double LeastOhms = 1e-15;
    private const double MostOhms = 1e18;
    private const double MostHenries = 1e6;
    private const double MostVolts = 1e9;

    internal static Problem? BeforeOhms(WiringNetwork network, int a, int b) =>
        Values(network) ?? Known(network, a) ?? Known(network, b) ?? Dead(network);

    internal static Problem? BeforeAc(WiringNetwork network, double hertz)
    {
        if (Values(network) is { } problem)
        {
            return problem;
        }

        if (!(hertz > 0 && hertz <= 1e6))
        {
            return new Problem("frequency", $"{hertz} Hz is not an alternating supply", "Give the frequency of the mains, 50 or 60 Hz");
        }

        return Driven(network) ?? Consistent(network);
    }

    internal static Problem? Known(WiringNetwork network, int node) => node >= 0 && node < network.NodeCount
        ? null
        : new Problem($"node number {node}", "is not in the network", "Ask Node(name) for the numbers of nodes");

    private static Problem? Dead(WiringNetwork network)
    {
        for (var e = 0; e < network.ElementCount; e++)
        {
            if (network.Driving[e] != 0 && !double.IsPositiveInfinity(network.Ohmic[e]))
            {
                return new Problem(Place(network, e), "is live, and no ohmmeter belongs on a live network", "Power off, or lift the source out");
            }
        }

        return null;
    }

    private static Problem? Driven(WiringNetwork network)
    {
        var found = false;
        for (var e = 0; e < network.ElementCount; e++)
        {
            found |= network.Layout.Kinds[e] == ElementKind.Source && !double.IsPositiveInfinity(network.Ohmic[e]);
        }

        if (!found)
        {
            return new Problem("network", "has no connected source", "Add a source, or ask for ohms instead");
        }

        var floating = network.Layout.UndrivenNode();
        return floating < 0
            ? null
            : new Problem($"node '{network.NodeName(floating)}'", "floats: nothing joins it to a source", "Connect it, or leave its part out");
    }

    private static Problem? Consistent(WiringNetwork network)
    {
        var joint = network.Topologies.Alternating(network).Contraction.Contradiction;
        return joint < 0
            ? null
            : new Problem(
                Place(network, joint),
                "closes a loop of perfect joints around a source without ohms",
                "Give the source its ohms, or the joint some");
    }

    private static Problem? Values(WiringNetwork network)
    {
        for (var e = 0; e < network.ElementCount; e++)
        {
            if (Ends(network, e) is { } badEnd)
            {
                return badEnd;
            }

            if (!IsResistance(network.Ohmic[e]))
            {
                return new Problem(
                    Place(network, e),
                    $"{network.Ohmic[e]} ohm is no resistance",
                    "Give 0 for a perfect joint, infinity for an open, else 1e-15 to 1e18 ohm");
            }

            if (!(network.Inductive[e] >= 0 && network.Inductive[e] <= MostHenries))
            {
                return new Problem(Place(network, e), $"{network.Inductive[e]} H is no inductance", "Give zero or a positive number of henries");
            }

            if (!(Math.Abs(network.Driving[e]) <= MostVolts))
            {
                return new Problem(Place(network, e), $"{network.Driving[e]} V is no voltage", "Give a finite number of volts");
            }
        }

        return null;
    }

    private static Problem? Ends(WiringNetwork network, int element)
    {
        var problem = Known(network, network.Layout.A[element]) ?? Known(network, network.Layout.B[element]);
        return problem is null
            ? null
            : new Problem(Place(network, element), $"ends at {problem.Place}, which is not in the network", problem.Remedy);
    }

    private static bool IsResistance(double ohms) => ohms == 0 || (ohms >= LeastOhms && ohms <= MostOhms) || double.IsPositiveInfinity(ohms);

    private static string Place(WiringNetwork network, int element) =>
        $"{network.Layout.Kinds[element].ToString().ToLowerInvariant()} '{network.Layout.Names[element]}'";
}
