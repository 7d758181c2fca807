using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>A line beside a place: words, or a bar of a coil's volts.</summary>
internal readonly record struct CircuitNote(string Text, bool IsWeak, ValveOnCircuit? Bar);

/// <summary>What is written into the drawing of a circuit: over it, and beside each place.</summary>
internal static class CircuitNotes
{
    public static string Title(CircuitAnswer circuit) =>
        $"{(circuit.Stations.Count == 1 ? "Station" : "Stations")} {string.Join(", ", circuit.Stations.Select(s => s.Station))} on, {circuit.Controller}";

    /// <summary>What stands under the title, then what would not do.</summary>
    public static IReadOnlyList<CircuitNote> Under(CircuitAnswer circuit)
    {
        var supply = circuit.Supply;
        return
        [
            Plain($"supply {Volts(supply.OpenVolts, supply.OpenVoltsSpread)} open, {Volts(supply.TerminalVolts, supply.TerminalVoltsSpread)} at the terminal"),
            Plain($"{Amperes(supply.Amperes, supply.AmperesSpread)}, {supply.VoltAmperes:0} of {supply.RatedVoltAmperes:0} VA"),
            Plain($"nothing broken · engine {circuit.Engine}, practice book {circuit.Book}"),
            Plain("scale from half the supply's volts to all"),
            Plain("bar: volts at the coil before its plunger moves, ± a standard deviation"),
            Plain("tick: what it needs to pull in"),
            .. circuit.Warnings.Select(w => new CircuitNote(w, true, null)),
        ];
    }

    /// <summary>Lines beside a place: what is connected there and, for a coil, what it does; short lines, so that they fit before the next place.</summary>
    public static IReadOnlyList<CircuitNote> At(string place, CircuitAnswer circuit) =>
    [
        .. place == circuit.Controller ? Controller(circuit) : [],
        .. circuit.Stations.SelectMany(s => s.Valves.Select(v => ($"station {s.Station}", v))).Where(v => v.v.Place == place).SelectMany(v => Coil(v.Item1, v.v)),
        .. circuit.Master is { } master && master.Valve.Place == place ? Coil("master valve", master.Valve) : [],
    ];

    private static IEnumerable<CircuitNote> Controller(CircuitAnswer circuit)
    {
        if (circuit.Commons.Count > 1)
        {
            foreach (var common in circuit.Commons)
            {
                yield return Plain($"common {common.Common}: {Amperes(common.Amperes, common.AmperesSpread)}");
            }
        }

        if (circuit.Relay is { } relay)
        {
            yield return Plain($"pump relay: {Amperes(relay.Amperes, relay.AmperesSpread)}");
        }

        if (circuit.Sensor is { } sensor)
        {
            yield return Plain($"in the common: {sensor}");
        }
    }

    private static IEnumerable<CircuitNote> Coil(string who, ValveOnCircuit valve)
    {
        yield return new CircuitNote($"{who}: {valve.Does}", valve.Does != "holds", null);
        if (valve.Grade == Grade.Inferred)
        {
            yield return Plain($"inferred that it is here{(valve.Probability is { } sure ? $", {Say.Share(sure)}" : string.Empty)}");
        }

        yield return Plain($"{Volts(valve.Volts, valve.VoltsSpread)}, {Amperes(valve.Amperes, valve.AmperesSpread)}");
        yield return new CircuitNote(string.Empty, false, valve);
    }

    private static CircuitNote Plain(string text) => new(text, false, null);

    private static string Volts(double volts, double spread) => Say.Amount(volts, spread, Dimension.Voltage);

    private static string Amperes(double amperes, double spread) => $"{amperes:0.000} ± {spread:0.000} A";
}
