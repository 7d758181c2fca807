using Underturf.Networks.Wiring;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>A common conductor of its own along the cable tree, laid as far as stations return to it.</summary>
internal sealed class Trunk(WiringNetwork network, CableTree tree, string name, int start)
{
    private readonly Dictionary<int, int> ends = new() { [0] = start };

    /// <summary>Its nodes by box, box 0 the controller.</summary>
    internal IReadOnlyDictionary<int, int> Ends => ends;

    internal int At(int box)
    {
        if (!ends.TryGetValue(box, out var node))
        {
            var before = At(tree.Parent(box));
            node = network.Node($"{name} box {box}");
            tree.LayCommon(network, $"{name} run {box}", before, node, box);
            ends.Add(box, node);
        }

        return node;
    }
}
