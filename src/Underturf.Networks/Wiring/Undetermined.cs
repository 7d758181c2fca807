using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>Questions that a network leaves without an answer.</summary>
internal static class Undetermined
{
    internal static Problem JointInLoop(WiringNetwork network, int element) => new(
        $"'{network.ElementAt(element).Name}'",
        "is a perfect joint in a loop of perfect joints, so its current is not determined",
        "Give one joint of the loop some ohms");

    internal static Problem JointAsReading(WiringNetwork network, int element) => new(
        $"'{network.ElementAt(element).Name}'",
        "has no ohms, so the change of its current is not computed",
        "Read the current of an element with ohms beside it");

    internal static Problem Between(WiringNetwork network, int a, int b) => new(
        $"nodes '{network.NodeName(a)}' and '{network.NodeName(b)}'",
        "are in separate parts, so the voltage between them is not determined",
        "Add the leakage or the meter's ohms that join the parts");

    internal static Problem NoSlope(string reading) => new(
        reading,
        "is zero, where a magnitude has no derivative",
        "Use the complex value instead");
}
