using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>
/// A property with half-wave devices for a transient run, and what is compared of it: the amperes of coils, diodes and sources, and the volts
/// across coils and sources. The studies use this file too.
/// </summary>
internal sealed class PropertyTransient
{
    internal const int Steps = 1000;
    internal const int Periods = 16;

    private readonly DiodeNetwork network;
    private readonly int ground;
    private readonly double hertz;
    private readonly int[] metered;

    internal PropertyTransient(DiodeNetwork network, int ground, double hertz)
    {
        (this.network, this.ground, this.hertz) = (network, ground, hertz);
        var diodes = network.Diodes.Select(d => d.Element).ToHashSet();
        metered = [.. Enumerable.Range(0, network.Wiring.ElementCount).Where(e => !double.IsPositiveInfinity(network.Wiring.ElementAt(e).Ohms) && (diodes.Contains(e) || HasVolts(e)))];
    }

    internal NgspiceTransient Run()
    {
        var nodes = metered.SelectMany(e => new[] { network.Wiring.ElementAt(e).A, network.Wiring.ElementAt(e).B }).Distinct().Where(n => n != ground);
        var saved = string.Join(' ', metered.Select(HalfWaveNetlist.Amperes).Concat(nodes.Select(HalfWaveNetlist.Volts)));
        return NgspiceTransient.Run($"{HalfWaveNetlist.WriteProperty(network, ground, hertz, metered)}.save {saved}\n", hertz, Periods, Steps).Value;
    }

    internal void Compare(PeriodicSolution ours, NgspiceTransient reference, HalfWaveAgreement agreement, string what)
    {
        foreach (var e in metered)
        {
            var element = network.Wiring.ElementAt(e);
            agreement.AddAmperes(ours.Current(e).Value, reference, HalfWaveNetlist.Amperes(e), $"{what}, amperes of {element.Name}");
            if (HasVolts(e))
            {
                agreement.AddVolts(ours.VoltageBetween(element.A, element.B).Value, reference, Across(element, reference), $"{what}, volts across {element.Name}");
            }
        }
    }

    private bool HasVolts(int element) => network.Wiring.ElementAt(element).Kind is ElementKind.Coil or ElementKind.Source;

    private string Across(Element element, NgspiceTransient reference) => (element.A == ground, element.B == ground) switch
    {
        (_, true) => HalfWaveNetlist.Volts(element.A),
        (true, _) => reference.Between(null, HalfWaveNetlist.Volts(element.B)),
        _ => reference.Between(HalfWaveNetlist.Volts(element.A), HalfWaveNetlist.Volts(element.B)),
    };
}
