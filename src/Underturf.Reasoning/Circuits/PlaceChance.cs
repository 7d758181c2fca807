using Underturf.Property;
using Underturf.Reasoning.Location;

namespace Underturf.Reasoning.Circuits;

/// <summary>How likely the valve that a station lacks lies where its wire was last seen, by all that bears on where it lies.</summary>
/// <param name="withinMetres">What counts as there.</param>
internal sealed class PlaceChance(LocationWriter writer, PropertyView view, double withinMetres)
{
    /// <summary>The same answer, with the chance of each place that is only inferred; nothing where there is no plan to reckon with.</summary>
    public CircuitAnswer In(CircuitAnswer circuit) => circuit.Stations.Any(s => s.Valves.Any(IsInferred))
        ? circuit with { Stations = [.. circuit.Stations.Select(s => s with { Valves = [.. s.Valves.Select(v => IsInferred(v) ? v with { Probability = Of(s.Id, v.PlaceId), WithinMetres = withinMetres } : v)] })] }
        : circuit;

    private static bool IsInferred(ValveOnCircuit valve) => valve.Grade == FieldLog.Grade.Inferred;

    private double? Of(string station, string place)
    {
        if (view.PositionOf(place) is not { } at || writer.Write(station, null) is not { Succeeded: true, Value: var hidden })
        {
            return null;
        }

        var heats = hidden.Things.Select(t => t.Heat).OfType<HeatMap>().ToList();
        return heats.Count == 0 ? null : Math.Min(1, heats.Sum(heat => heat.Within(at, withinMetres)));
    }
}
