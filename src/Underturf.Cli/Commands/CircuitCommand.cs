using System.CommandLine;
using Underturf.Papers;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Cli.Commands;

/// <summary>What stations do when they are on: volts, amperes, ohms along their wires, and a drawing.</summary>
internal static class CircuitCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var stations = new Argument<string[]>("STATIONS") { Description = "Stations that are on together, by number or id.", Arity = ArgumentArity.OneOrMore };
        var draw = new Option<FileInfo?>("--draw") { Description = "Draw the circuit into an SVG file." };
        var command = new Command("circuit", "Compute volts, amperes and ohms of stations that are on, nothing broken.") { log, stations, draw, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var circuit = notebook.Circuit(parsed.GetRequiredValue(stations));
            if (!circuit.Succeeded)
            {
                throw new Refusal(circuit.Problem!);
            }

            var usUnits = notebook.History.Facts.UsesUsUnits;
            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(circuit.Value) : Text(circuit.Value, usUnits));
            if (parsed.GetValue(draw) is { } file)
            {
                Files.Write(file.FullName, CircuitDrawing.Make(circuit.Value, usUnits));
            }

            return Guard.Report(notebook.Problems);
        });
        return command;
    }

    private static string Text(CircuitAnswer circuit, bool usUnits)
    {
        var stations = circuit.Stations.SelectMany(s => s.Valves.Select(v => new[]
        {
            s.Station, $"{s.Ohms:0.0} ± {s.OhmsSpread:0.0} ohm", $"{s.Amperes:0.00} A", v.Place, $"{v.PullInVolts:0.0} V", $"{v.Volts:0.0} V", v.Does, s.Guessed ? "run assumed" : string.Empty,
        }));
        var runs = circuit.Runs.Select(r => new[]
        {
            r.From, r.To, Say.Length(r.LengthMetres, usUnits), $"{r.Wire}, common {r.Common}", $"{r.LostVolts:0.0} V", $"{r.FarVolts:0.0} V",
        });
        return string.Join(
            Environment.NewLine,
            $"{circuit.Controller}: supply {circuit.SupplyVolts:0.0} V open, {circuit.TerminalVolts:0.0} V at the terminal, {circuit.CommonAmperes:0.00} A in the common. Nothing broken.",
            string.Empty,
            TextTable.Of(["station", "ohms", "amperes", "valve", "to pull in", "settled", "coil", ""], stations),
            string.Empty,
            TextTable.Of(["from", "to", "length", "wire", "lost", "volts there"], runs),
            string.Empty,
            $"Engine {circuit.Engine}, practice book {circuit.Book}. Local codes and licensed practice prevail.");
    }
}
