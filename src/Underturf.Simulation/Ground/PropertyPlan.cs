using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>A property as it was really built.</summary>
/// <param name="Boxes">Parents before children.</param>
internal sealed record PropertyPlan(
    Terrain Terrain,
    IReadOnlyList<Phase> Phases,
    IReadOnlyList<PlannedBox> Boxes,
    IReadOnlyList<PlannedStation> Stations,
    IReadOnlyDictionary<(int Box, int Phase), PlannedRun> Runs)
{
    public static string ControllerId(int controller) => $"c{controller + 1}";

    /// <summary>The boxes that a station's wires pass, from the controller outward, its own last.</summary>
    public IReadOnlyList<int> Chain(PlannedStation station)
    {
        var chain = new Stack<int>();
        for (var box = station.Box; box >= 0; box = Boxes[box].Parent)
        {
            chain.Push(box);
        }

        return [.. chain];
    }

    /// <summary>Name of the common that a station's coil returns by.</summary>
    public string CommonOf(PlannedStation station) =>
        ControllerId(Boxes[station.Box].Controller) + (Phases[station.Phase].OwnCommon ? $" phase {station.Phase + 1}" : string.Empty);

    /// <summary>The true wires, each length exact.</summary>
    public IReadOnlyList<StationPath> Paths() => [.. Stations.Select(PathOf)];

    /// <summary>The phase that dug to a place.</summary>
    public int PhaseAt(string place) => Boxes[int.Parse(place.AsSpan(1), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture)].Phase;

    private StationPath PathOf(PlannedStation station)
    {
        var (legs, phase) = (new List<Leg>(), Phases[station.Phase]);
        var controller = ControllerId(Boxes[station.Box].Controller);
        foreach (var box in Chain(station))
        {
            foreach (var stretch in Runs[(box, station.Phase)].Stretches(box))
            {
                var from = legs.Count == 0 ? controller : legs[^1].To;
                legs.Add(new Leg($"k{station.Phase + 1}-{stretch.To}", from, stretch.To, stretch.Metres, 0, WireSize.FromAwg(stretch.Awg), WireSize.FromAwg(phase.CommonAwg), legs.Count - 1));
            }
        }

        return new StationPath(station.Id, controller, legs, [new ValveEnd($"v{station.Id[1..]}", legs[^1].To, legs.Count - 1, phase.CoilOhms, station.Id)], false);
    }
}

/// <summary>A box, or where one should be.</summary>
/// <param name="Parent">Index of the box before it; -1 at the controller.</param>
/// <param name="Buried">Nobody has found it.</param>
internal sealed record PlannedBox(string Id, Position At, int Parent, int Controller, int Phase, bool Buried);

/// <summary>A station and its valve.</summary>
internal sealed record PlannedStation(string Id, int Terminal, int Box, int Phase);

/// <summary>The wires of one phase from the box before to a box.</summary>
/// <param name="ChangesAt">Share of the way at which somebody went on with other wire, in a splice that no box holds; nothing for one wire.</param>
internal sealed record PlannedRun(double Metres, int Awg, double? ChangesAt, int ThenAwg)
{
    public IEnumerable<(string To, double Metres, int Awg)> Stretches(int box)
    {
        if (ChangesAt is { } share)
        {
            yield return ($"x{box}", share * Metres, Awg);
            yield return ($"b{box}", (1 - share) * Metres, ThenAwg);
        }
        else
        {
            yield return ($"b{box}", Metres, Awg);
        }
    }
}
