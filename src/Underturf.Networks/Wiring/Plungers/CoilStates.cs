using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>
/// Plungers and volts made consistent: all start out; those with the volts to pull in do, which takes load off the wire and may let others
/// follow; one that falls out again after that chatters. Each plunger moves at most twice, so it ends.
/// </summary>
public static class CoilStates
{
    /// <param name="network">With its sources connected.</param>
    /// <returns>The settled network, or the problem of solving it, or of a coil whose numbers cannot be.</returns>
    public static Outcome<SettledCoils> Settle(WiringNetwork network, double hertz, IReadOnlyList<ValveCoil> coils)
    {
        if (Impossible(network, coils) is { } impossible)
        {
            return impossible;
        }

        var plungers = new Plunger[coils.Count];
        for (var solves = 1; ; solves++)
        {
            var standing = With(network, coils, plungers);
            var solved = standing.SolveAc(hertz);
            if (!solved.Succeeded)
            {
                return solved.Problem!;
            }

            var volts = coils.Select(c => VoltsAcross(standing, solved.Value, c.Element)).ToArray();
            if (!Move(coils, plungers, volts))
            {
                return new SettledCoils(standing, solved.Value, Resting(coils, plungers, volts), solves);
            }
        }
    }

    private static Problem? Impossible(WiringNetwork network, IReadOnlyList<ValveCoil> coils)
    {
        foreach (var coil in coils)
        {
            if (coil.Element < 0 || coil.Element >= network.ElementCount || network.ElementAt(coil.Element).Kind != ElementKind.Coil)
            {
                return new Problem($"element number {coil.Element}", "is no coil of the network", "Give the numbers that AddCoil returned");
            }

            if (!(coil.PullInVolts > coil.DropOutVolts && coil.DropOutVolts >= 0 && coil.HoldingHenries >= coil.InrushHenries))
            {
                return new Problem(network.ElementAt(coil.Element).Name, "would fall out above the volts that pull it in, or hold with less inductance", "Give pull-in volts above drop-out volts, and holding henries not below those of inrush");
            }
        }

        return null;
    }

    /// <summary>Pulls in what can; else lets fall what cannot stay. Pulling in first, because it only helps the others.</summary>
    private static bool Move(IReadOnlyList<ValveCoil> coils, Plunger[] plungers, double[] volts)
    {
        var moved = false;
        for (var k = 0; k < plungers.Length; k++)
        {
            if (plungers[k] == Plunger.Rests && volts[k] >= coils[k].PullInVolts)
            {
                plungers[k] = Plunger.Holds;
                moved = true;
            }
        }

        for (var k = 0; k < plungers.Length && !moved; k++)
        {
            if (plungers[k] == Plunger.Holds && volts[k] < coils[k].DropOutVolts)
            {
                plungers[k] = Plunger.Chatters;
                moved = true;
            }
        }

        return moved;
    }

    private static Plunger[] Resting(IReadOnlyList<ValveCoil> coils, Plunger[] plungers, double[] volts) =>
        [.. plungers.Select((p, k) => p == Plunger.Rests && volts[k] >= coils[k].DropOutVolts ? Plunger.Chatters : p)];

    private static WiringNetwork With(WiringNetwork network, IReadOnlyList<ValveCoil> coils, Plunger[] plungers)
    {
        for (var k = 0; k < plungers.Length; k++)
        {
            network = network.WithHenries(coils[k].Element, plungers[k] == Plunger.Holds ? coils[k].HoldingHenries : coils[k].InrushHenries);
        }

        return network;
    }

    /// <summary>None where an open leaves the coil without a voltage.</summary>
    private static double VoltsAcross(WiringNetwork network, AcSolution solution, int element)
    {
        var coil = network.ElementAt(element);
        var volts = solution.VoltageBetween(coil.A, coil.B);
        return volts.Succeeded ? volts.Value.Magnitude : 0;
    }
}
