namespace Underturf.Networks.Wiring;

/// <summary>The topologies of all variants that differ in values only, made on first use.</summary>
internal sealed class TopologyCache
{
    private Topology? direct;
    private Topology? alternating;

    /// <summary>For direct current: a coil counts by its ohms.</summary>
    internal Topology Direct(WiringNetwork network) => direct ??= Make(network, inductive: false);

    /// <summary>For alternating current: a coil without ohms still has its inductance.</summary>
    internal Topology Alternating(WiringNetwork network) => alternating ??= Make(network, inductive: true);

    private static Topology Make(WiringNetwork network, bool inductive)
    {
        var joints = new List<int>();
        var finite = new bool[network.ElementCount];
        for (var e = 0; e < finite.Length; e++)
        {
            var ohms = network.Ohmic[e];
            if (ohms == 0 && !(inductive && network.Inductive[e] > 0))
            {
                joints.Add(e);
            }
            else
            {
                finite[e] = !double.IsPositiveInfinity(ohms);
            }
        }

        return new Topology(network, new Contraction(network, joints), finite);
    }
}
