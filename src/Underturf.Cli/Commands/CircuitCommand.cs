using System.CommandLine;
using Underturf.Papers;
using Underturf.Reasoning;

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
            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(circuit.Value) : CircuitText.Write(circuit.Value, usUnits));
            if (parsed.GetValue(draw) is { } file)
            {
                Files.Write(file.FullName, CircuitDrawing.Make(circuit.Value, usUnits));
            }

            return Guard.Notes(notebook.Problems);
        });
        return command;
    }
}
