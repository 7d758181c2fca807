using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>Leaks to earth, shunts between conductor and common, breaks.</summary>
internal sealed class Troubles(Draws draws)
{
    internal Traits Traits { get; private set; }

    /// <summary>None, one (the circuit floats, so it shows nothing) or several leaks from conductors and commons to earth.</summary>
    /// <returns>The node of the earth; none without leaks.</returns>
    internal int? AddLeaks(WiringNetwork network, IReadOnlyList<StationWiring.Joint> joints, IReadOnlyList<Trunk> trunks)
    {
        var leaks = draws.Below(4);
        for (var leak = 0; leak < leaks; leak++)
        {
            var at = draws.OneIn(3) ? draws.Of(draws.Of(trunks).Ends.Values.ToArray()) : draws.Of(joints).Into;
            network.AddResistor($"leak {leak}", at, network.Node("earth"), draws.Decades(2, 6));
        }

        Traits |= leaks switch { 0 => Traits.None, 1 => Traits.OneLeak, _ => Traits.SeveralLeaks };
        return leaks == 0 ? null : network.Node("earth");
    }

    internal void AddShunt(WiringNetwork network, IReadOnlyList<StationWiring.Joint> joints, IReadOnlyList<Trunk> trunks)
    {
        if (draws.OneIn(3))
        {
            network.AddResistor("shunt", draws.Of(joints).OutOf, draws.Of(draws.Of(trunks).Ends.Values.ToArray()), draws.Decades(0, 5));
            Traits |= Traits.Shunt;
        }
    }

    /// <summary>Opens a wire or a splice: of a station, or of a common with all that is behind it.</summary>
    internal DiodeNetwork Cut(DiodeNetwork circuit)
    {
        if (!draws.OneIn(3))
        {
            return circuit;
        }

        Traits |= Traits.Cut;
        var wires = Enumerable.Range(0, circuit.Wiring.ElementCount).Where(e => circuit.Wiring.ElementAt(e).Kind == ElementKind.Conductor).ToArray();
        return circuit.With(circuit.Wiring.With(draws.Of(wires), double.PositiveInfinity));
    }
}
