using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Cli;

/// <summary>Stations that are on, as text for a terminal.</summary>
internal static class CircuitText
{
    public static string Write(CircuitAnswer circuit, bool usUnits)
    {
        var supply = circuit.Supply;
        return string.Join(Environment.NewLine, (IEnumerable<string>)
        [
            $"{circuit.Controller}: supply {Volts(supply.OpenVolts, supply.OpenVoltsSpread)} open, {Volts(supply.TerminalVolts, supply.TerminalVoltsSpread)} at the terminal, {Amperes(supply.Amperes, supply.AmperesSpread)}. Nothing broken.",
            $"Taken {supply.VoltAmperes:0.0} ± {supply.VoltAmperesSpread:0.0} VA of {supply.RatedVoltAmperes:0} VA{(supply.RatingNoted ? string.Empty : ", the usual rating")}; {supply.Ohms:0.0} ohm inside the supply.",
            .. Besides(circuit),
            .. circuit.Warnings.Select(w => $"! {w}"),
            string.Empty,
            TextTable.Of(["station", "ohms", "amperes", "valve", "grade", "to pull in", "settled", "coil", ""], Stations(circuit)),
            .. circuit.Stations.SelectMany(s => s.Valves.Where(v => v.Grade == Grade.Inferred).Select(v => Inferred(s, v, usUnits))),
            string.Empty,
            TextTable.Of(["from", "to", "length", "wire", "lost", "volts there"], circuit.Runs.Select(r => Run(r, circuit, usUnits))),
            string.Empty,
            $"A spread is a standard deviation, plungers as said. Engine {circuit.Engine}, practice book {circuit.Book}. Local codes and licensed practice prevail.",
        ]);
    }

    private static IEnumerable<string> Besides(CircuitAnswer circuit)
    {
        if (circuit.Commons.Count > 1)
        {
            yield return string.Join(", ", circuit.Commons.Select(c => $"common {c.Common} {Amperes(c.Amperes, c.AmperesSpread)}")) + ".";
        }

        if (circuit.Relay is { } relay)
        {
            yield return $"Pump relay on with every station: {Amperes(relay.Amperes, relay.AmperesSpread)}, {relay.Ohms:0.0} ohm.";
        }

        if (circuit.Sensor is { } sensor)
        {
            yield return $"Sensor in the common, taken as closed: {sensor}.";
        }
    }

    private static IEnumerable<string[]> Stations(CircuitAnswer circuit)
    {
        foreach (var station in circuit.Stations)
        {
            var name = circuit.Commons.Count > 1 ? $"{station.Station}, common {station.Common}" : station.Station;
            foreach (var valve in station.Valves)
            {
                yield return [name, Say.Amount(station.Ohms, station.OhmsSpread, Dimension.Resistance), Amperes(station.Amperes, station.AmperesSpread), .. Coil(valve), station.Guessed ? "run assumed" : string.Empty];
            }
        }

        if (circuit.Master is { } master)
        {
            yield return ["master", string.Empty, Amperes(master.Valve.Amperes, master.Valve.AmperesSpread), .. Coil(master.Valve), master.Guessed ? "run assumed" : string.Empty];
        }
    }

    /// <summary>Why a place is taken that nobody has noted.</summary>
    private static string Inferred(StationOnCircuit station, ValveOnCircuit valve, bool usUnits) =>
        $"? valve of station {station.Station}: nobody has found it; its wire was last seen at {valve.Place}{(valve.Probability is { } sure ? $", {Say.Share(sure)} that it lies within {Say.Length(valve.WithinMetres ?? 0, usUnits)} of there" : string.Empty)}.";

    private static string[] Coil(ValveOnCircuit valve) =>
        [valve.Place, $"{valve.Grade.ToString().ToLowerInvariant()}{(valve.Probability is { } sure ? $", {Say.Share(sure)}" : string.Empty)}", Volts(valve.PullInVolts, valve.PullInVoltsSpread), Volts(valve.Volts, valve.VoltsSpread), valve.Does];

    private static string[] Run(RunOnCircuit run, CircuitAnswer circuit, bool usUnits)
    {
        var back = circuit.Commons.Count > 1 ? $"{run.Back} ({string.Join(", ", run.Commons)})" : run.Back;
        return [run.From, run.To, Say.Length(run.LengthMetres, usUnits), $"{run.Wire}, common {back}", $"{run.LostVolts:0.0} V", $"{run.FarVolts:0.0} V"];
    }

    private static string Volts(double volts, double spread) => Say.Amount(volts, spread, Dimension.Voltage);

    private static string Amperes(double amperes, double spread) => $"{amperes:0.000} ± {spread:0.000} A";
}
