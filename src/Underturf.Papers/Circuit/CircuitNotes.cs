using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>What is written into the drawing of a circuit: over it, and beside each place.</summary>
internal static class CircuitNotes
{
    public static string Title(CircuitAnswer circuit) =>
        $"{(circuit.Stations.Count == 1 ? "Station" : "Stations")} {string.Join(", ", circuit.Stations.Select(s => s.Station))} on, {circuit.Controller}";

    /// <summary>What stands under the title, then what would not do.</summary>
    public static IReadOnlyList<(string Text, bool IsWarning)> Under(CircuitAnswer circuit)
    {
        var supply = circuit.Supply;
        return
        [
            ($"supply {Volts(supply.OpenVolts, supply.OpenVoltsSpread)} open, {Volts(supply.TerminalVolts, supply.TerminalVoltsSpread)} at the terminal", false),
            ($"{Amperes(supply.Amperes, supply.AmperesSpread)}, {supply.VoltAmperes:0} of {supply.RatedVoltAmperes:0} VA", false),
            ($"nothing broken · engine {circuit.Engine}, practice book {circuit.Book}", false),
            .. circuit.Warnings.Select(w => (w, true)),
        ];
    }

    /// <summary>Lines beside a place: what is connected there and, for a coil, what it does; two lines a coil, so that they fit before the next place.</summary>
    public static IReadOnlyList<(string Text, bool IsWeak)> At(string place, CircuitAnswer circuit) =>
    [
        .. place == circuit.Controller ? Controller(circuit) : [],
        .. circuit.Stations.SelectMany(s => s.Valves.Select(v => ($"station {s.Station}", v))).Where(v => v.v.Place == place).SelectMany(v => Coil(v.Item1, v.v)),
        .. circuit.Master is { } master && master.Valve.Place == place ? Coil("master valve", master.Valve) : [],
    ];

    private static IEnumerable<(string, bool)> Controller(CircuitAnswer circuit)
    {
        if (circuit.Commons.Count > 1)
        {
            foreach (var common in circuit.Commons)
            {
                yield return ($"common {common.Common}: {Amperes(common.Amperes, common.AmperesSpread)}", false);
            }
        }

        if (circuit.Relay is { } relay)
        {
            yield return ($"pump relay: {Amperes(relay.Amperes, relay.AmperesSpread)}", false);
        }

        if (circuit.Sensor is { } sensor)
        {
            yield return ($"in the common: {sensor}", false);
        }
    }

    private static IEnumerable<(string, bool)> Coil(string who, ValveOnCircuit valve)
    {
        yield return ($"{who}: {valve.Does}", valve.Does != "holds");
        yield return ($"{Volts(valve.Volts, valve.VoltsSpread)}, {Amperes(valve.Amperes, valve.AmperesSpread)}", false);
    }

    private static string Volts(double volts, double spread) => Say.Amount(volts, spread, Dimension.Voltage);

    private static string Amperes(double amperes, double spread) => $"{amperes:0.000} ± {spread:0.000} A";
}
