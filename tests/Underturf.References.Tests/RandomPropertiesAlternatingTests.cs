using System.Numerics;
using Underturf.Networks.Wiring;
using Underturf.References.Tests.RandomProperties;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>
/// Every node voltage of the random properties with stations on, plungers settled, against ngspice. The project asks for 0.1 %; both engines
/// solve the same linear equations, so the test asks for one part in a million above a floor of one microvolt.
/// </summary>
public sealed class RandomPropertiesAlternatingTests(ITestOutputHelper output)
{
    private const int PerProcess = 4;

    private readonly Comparison volts = new(1e-6, 1e-6);
    private readonly int[] plungers = new int[3];
    private int floating;

    [Fact]
    public void Every_node_voltage_with_stations_on_agrees()
    {
        foreach (var alike in PropertySet.Linear().GroupBy(p => p.Hertz))
        {
            foreach (var batch in alike.Chunk(PerProcess))
            {
                Compare(alike.Key, batch);
            }
        }

        output.WriteLine($"ngspice, AC: {volts.Count} node voltages compared, worst {volts.WorstShare:0.0e0} above a microvolt; {floating} nodes cut off from every source left out; plungers rest {plungers[0]}, chatter {plungers[1]}, hold {plungers[2]}.");
        Assert.Null(volts.Disagreement);
        Assert.True(volts.Count > 50_000 && floating < volts.Count / 10);
        Assert.All(plungers, count => Assert.True(count > 20));
    }

    private void Compare(double hertz, MixedProperty[] batch)
    {
        var netlist = new Netlist();
        var settled = batch.Select(p => CoilStates.Settle(p.Network, hertz, p.Coils).Value).ToArray();
        var copies = batch.Zip(settled, (p, s) => netlist.Add(s.Network, p.Returns.First(), live: true)).ToArray();
        var reference = Ngspice.Run(netlist.Text, $"ac lin 1 {hertz} {hertz}");
        for (var k = 0; k < batch.Length; k++)
        {
            var (copy, solution) = (copies[k], settled[k].Solution);
            Complex Theirs(int node) => reference[Netlist.Volts(copy, node)];
            Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-10);
            for (var node = 0; node < batch[k].Network.NodeCount; node++)
            {
                CompareNode(batch[k], solution, node, Theirs);
            }

            CheckPlungers(batch[k], settled[k], Theirs);
        }
    }

    private void CompareNode(MixedProperty property, AcSolution solution, int node, Func<int, Complex> theirs)
    {
        foreach (var cold in property.Returns)
        {
            if (solution.VoltageBetween(node, cold) is { Succeeded: true, Value: var ours })
            {
                volts.Add(theirs(node) - theirs(cold), new Complex(ours.Real, ours.Imaginary), property.Network.NodeName(node));
                return;
            }
        }

        floating++;
    }

    /// <summary>By the engine's own volts: what holds has the volts to stay, what rests has too few to move.</summary>
    private void CheckPlungers(MixedProperty property, SettledCoils settled, Func<int, Complex> theirs)
    {
        const double Slack = 1e-4;
        foreach (var (coil, plunger) in property.Coils.Zip(settled.Plungers))
        {
            var element = settled.Network.ElementAt(coil.Element);
            var across = settled.Solution.VoltageBetween(element.A, element.B).Succeeded ? (theirs(element.A) - theirs(element.B)).Magnitude : 0;
            plungers[(int)plunger]++;
            Assert.True(plunger switch
            {
                Plunger.Holds => across > coil.DropOutVolts - Slack,
                Plunger.Rests => across < coil.DropOutVolts + Slack,
                _ => across < coil.PullInVolts + Slack,
            });
        }
    }
}
