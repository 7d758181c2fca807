using Underturf.Networks.Wiring;
using Underturf.Numerics;
using Underturf.Reasoning;
using Underturf.Reasoning.Translation;

namespace Underturf.Planning.Rework;

/// <summary>What a station will show when it is on alone, and what its coil gets at the worst.</summary>
internal sealed class Foresight(Notebook notebook)
{
    /// <summary>Stations tried as company.</summary>
    private const int Tried = 3;

    private readonly int together = notebook.Book.Rework.StationsTogether;

    public Foreseen? Of(StationPath path)
    {
        var alone = notebook.Foresee([path]);
        var company = together > 1 ? Company(path) : [];
        var worst = company.Count == 0 ? alone : notebook.Foresee([path, .. company]);
        if (!alone.Succeeded || !worst.Succeeded)
        {
            return null;
        }

        var (station, valve) = (alone.Value.Stations[0], Weakest(alone.Value));
        var least = Weakest(worst.Value);
        var spread = double.Hypot(least.PullInVoltsSpread, notebook.Book.Coil.PullInSpread);
        return new Foreseen(
            station.Valves.Count,
            station.Ohms,
            station.OhmsSpread,
            station.Amperes,
            station.AmperesSpread,
            valve.PullInVolts,
            valve.PullInVoltsSpread,
            least.PullInVolts,
            least.PullInVoltsSpread,
            least.NeedsVolts,
            Normal.Cdf((least.PullInVolts - least.NeedsVolts) / spread),
            [.. company.Select(c => notebook.History.Now.StationNumber(c.Station))]);
    }

    /// <summary>Of the other stations those that take most from it; where only one other may be on, the likeliest three are tried.</summary>
    private IReadOnlyList<StationPath> Company(StationPath path)
    {
        var ranked = notebook.Paths.Values
            .Where(p => p.Controller == path.Controller && p.Station != path.Station)
            .OrderByDescending(p => ((CopperWire.OhmMetresAt20C * Wires.SharedCommon(path, p)) + SupplyOhms) * Amperes(p))
            .ThenBy(p => p.Station, StringComparer.Ordinal)
            .Take(Math.Max(Tried, together - 1))
            .ToList();
        return together != 2 ? [.. ranked.Take(together - 1)] : [.. ranked.OrderBy(p => Volts(path, p)).Take(1)];
    }

    /// <summary>Inside the usual supply: every station of a controller takes volts there from every other.</summary>
    private double SupplyOhms => new Transformer(notebook.Book.Supply.Volts, notebook.Book.Supply.RatedVolts, notebook.Book.Supply.RatedVoltAmperes).InnerOhms;

    private double Volts(StationPath path, StationPath other) =>
        notebook.Foresee([path, other]) is { Succeeded: true, Value: var circuit } ? Weakest(circuit).PullInVolts : double.PositiveInfinity;

    /// <summary>In proportion to what it takes before its plungers move: the usual coil behind its own wires.</summary>
    private double Amperes(StationPath path)
    {
        var coil = notebook.Book.Coil;
        var kelvins = notebook.Book.Wire.SoilKelvins;
        return path.Valves.Sum(v => 1 / double.Hypot(coil.InrushReactanceOhms, (v.NotedOhms ?? coil.Ohms) + Wires.OhmsTo(path, v.Leg, kelvins)));
    }

    private static ValveOnCircuit Weakest(CircuitAnswer circuit) => circuit.Stations[0].Valves.MinBy(v => v.PullInVolts - v.NeedsVolts)!;
}
