using Underturf.Networks.Wiring.Instruments;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>The independent unknowns of one distance: each has a name, so that a spread can say where it comes from.</summary>
internal sealed class Unknowns
{
    private readonly List<string> names = [];

    internal Uncertain Add(string name, double value, double spread)
    {
        names.Add(name);
        return Uncertain.Along(names.Count - 1, value, spread);
    }

    internal Uncertain Add(string name, MeasuredOhms ohms) => Add(name, ohms.Ohms, ohms.SpreadOhms);

    internal Uncertain Add(string name, MeasuredFarads farads) => Add(name, farads.Farads, farads.SpreadFarads);

    internal DistanceEstimate Estimate(Uncertain metres)
    {
        var sources = metres.Slopes
            .Select((slope, k) => new SpreadSource(names[k], Math.Abs(slope)))
            .Where(source => source.SpreadMetres > 0)
            .OrderByDescending(source => source.SpreadMetres)
            .ToArray();
        return new DistanceEstimate(metres.Value, metres.Spread, sources);
    }
}
