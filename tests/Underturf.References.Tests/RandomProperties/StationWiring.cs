using Underturf.Networks.Wiring;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>Conductors from terminals into boxes, with the splices on their way; some are swapped, crossed or bad before they are made.</summary>
internal sealed class StationWiring(WiringNetwork network, CableTree tree, Draws draws)
{
    private readonly List<Joint> joints = [];

    /// <summary>Ends in boxes, where leaks and shunts can be.</summary>
    internal IReadOnlyList<Joint> Joints => joints;

    internal Traits Traits { get; private set; }

    /// <returns>The lead in the box.</returns>
    internal int Lay(string name, int terminal, int box)
    {
        var node = terminal;
        foreach (var hop in tree.PathTo(box))
        {
            var into = network.Node($"{name} into box {hop}");
            tree.LayStation(network, $"{name} run {hop}", node, into, hop);
            node = into;
            if (hop == box || draws.OneIn(4))
            {
                node = network.Node($"{name} out of box {hop}");
                joints.Add(new Joint($"{name} splice {hop}", hop, into, node));
            }
        }

        return node;
    }

    /// <summary>Makes the splices, after the mistakes.</summary>
    internal void Splice()
    {
        SwapAndCross();
        var bad = draws.OneIn(3) ? draws.Below(joints.Count) : -1;
        Traits |= bad >= 0 ? Traits.BadSplice : Traits.None;
        for (var k = 0; k < joints.Count; k++)
        {
            network.AddResistor(joints[k].Name, joints[k].Into, joints[k].OutOf, k == bad ? draws.Decades(0, 2.3) : draws.SpliceOhms());
        }
    }

    private void SwapAndCross()
    {
        var met = joints.Select((joint, at) => (joint.Box, At: at)).GroupBy(j => j.Box, j => j.At).Where(box => box.Count() > 1).Select(box => box.ToArray()).ToArray();
        if (met.Length > 0 && draws.OneIn(3))
        {
            var (one, other) = Two(met);
            (joints[one], joints[other]) = (joints[one] with { OutOf = joints[other].OutOf }, joints[other] with { OutOf = joints[one].OutOf });
            Traits |= Traits.Swapped;
        }

        if (met.Length > 0 && draws.OneIn(3))
        {
            var (one, other) = Two(met);
            network.AddResistor("crossed", joints[one].Into, joints[other].Into, draws.Between(0.01, 0.3));
            Traits |= Traits.Crossed;
        }
    }

    private (int One, int Other) Two(int[][] met)
    {
        var box = draws.Of(met);
        var first = draws.Below(box.Length);
        return (box[first], box[(first + 1 + draws.Below(box.Length - 1)) % box.Length]);
    }

    /// <summary>Two ends of a conductor that a splice joins in a box.</summary>
    internal readonly record struct Joint(string Name, int Box, int Into, int OutOf);
}
