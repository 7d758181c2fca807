namespace Underturf.Networks.Wiring;

/// <summary>
/// Currents through perfect joints and ideal sources, which have no admittance, from Kirchhoff's law alone: a node with one joint left gives
/// that joint's current. Joints in a loop of joints share their current in a way no ohms decide; theirs stay NaN.
/// </summary>
internal static class JointCurrents
{
    /// <param name="leaving">Amperes that leave each node by everything but joints; used up.</param>
    /// <param name="currents">By element; those of the joints are filled in.</param>
    internal static void Fill(WiringNetwork network, IReadOnlyList<int> joints, double[] leaving, double[] currents)
    {
        var open = new int[leaving.Length];
        var mix = new int[leaving.Length];
        foreach (var e in joints)
        {
            currents[e] = double.NaN;
            Count(network, e, 1, open, mix);
        }

        foreach (var e in joints)
        {
            Follow(network, network.Layout.A[e], leaving, currents, open, mix);
            Follow(network, network.Layout.B[e], leaving, currents, open, mix);
        }
    }

    /// <summary>From a node with one joint left, as far as one joint is left. The exclusive or of its joints then is that joint.</summary>
    private static void Follow(WiringNetwork network, int node, double[] leaving, double[] currents, int[] open, int[] mix)
    {
        while (open[node] == 1)
        {
            var e = mix[node];
            var isA = network.Layout.A[e] == node;
            var other = isA ? network.Layout.B[e] : network.Layout.A[e];
            currents[e] = isA ? -leaving[node] : leaving[node];
            leaving[other] += leaving[node];
            Count(network, e, -1, open, mix);
            node = other;
        }
    }

    private static void Count(WiringNetwork network, int element, int by, int[] open, int[] mix)
    {
        var a = network.Layout.A[element];
        var b = network.Layout.B[element];
        open[a] += by;
        open[b] += by;
        mix[a] ^= element;
        mix[b] ^= element;
    }
}
