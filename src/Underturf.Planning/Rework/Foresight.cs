using Underturf.Numerics;
using Underturf.Reasoning;
using Underturf.Reasoning.Translation;

namespace Underturf.Planning.Rework;

/// <summary>What a station will show when it is on alone, and what its coil gets at the worst.</summary>
internal sealed class Foresight(Notebook notebook)
{
    private readonly int together = notebook.Book.Rework.StationsTogether;

    public Foreseen? Of(StationPath path)
    {
        var alone = notebook.Foresee([path]);
        var company = Company(path);
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

    /// <summary>Of the other stations those that share most ohms of the common with it: by them it loses most.</summary>
    private List<StationPath> Company(StationPath path) =>
    [
        .. notebook.Paths.Values
            .Where(p => p.Controller == path.Controller && p.Station != path.Station)
            .OrderByDescending(p => Wires.SharedCommon(path, p))
            .ThenBy(p => p.Station, StringComparer.Ordinal)
            .Take(together - 1),
    ];

    private static ValveOnCircuit Weakest(CircuitAnswer circuit) => circuit.Stations[0].Valves.MinBy(v => v.PullInVolts - v.NeedsVolts)!;
}
