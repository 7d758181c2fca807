using System.CommandLine;
using Underturf.Quantities;
using Underturf.Simulation;

namespace Underturf.Cli.Commands;

/// <summary>A made-up property with a known truth, to try the tool on.</summary>
internal static class SimulateCommand
{
    private const int LeastStations = 10, MostStations = 300, MostFaults = 6;

    public static Command Make()
    {
        var target = new Option<DirectoryInfo>("--out") { Description = "Where to put log.jsonl and truth.json.", Required = true };
        var stations = new Option<int>("--stations") { Description = $"How many stations, {LeastStations} to {MostStations}.", DefaultValueFactory = _ => 40 };
        var faults = new Option<int>("--faults") { Description = $"How many faults, 1 to {MostFaults}.", DefaultValueFactory = _ => 3 };
        var seed = new Option<long>("--seed") { Description = "The same seed makes the same property.", DefaultValueFactory = _ => 1 };
        var book = Arguments.Book();
        var command = new Command("simulate", "Make up a property with known faults: a field log, and the truth apart from it.") { target, stations, faults, seed, book };
        command.SetAction(parsed =>
        {
            var (count, wrong, number) = (Within("--stations", parsed.GetValue(stations), LeastStations, MostStations), Within("--faults", parsed.GetValue(faults), 1, MostFaults), (ulong)parsed.GetValue(seed));
            var world = WorldGenerator.Make(number, Files.Book(parsed.GetValue(book)), WorldShape.Whole(count, wrong));
            var folder = parsed.GetRequiredValue(target);
            folder.Create();
            Files.Write(Path.Combine(folder.FullName, "log.jsonl"), world.Log.ToBytes().Span);
            Files.Write(Path.Combine(folder.FullName, "truth.json"), world.TruthBytes(number));
            Console.WriteLine($"{world.Log.Entries.Count} notes of {count} stations in log.jsonl; what is really wrong ({world.Faults.Count}) in truth.json.");
            return ExitCode.Good;
        });
        return command;
    }

    private static int Within(string option, int value, int least, int most) => value >= least && value <= most
        ? value
        : throw new Refusal(new Problem(option, $"is {value}", $"Give a number from {least} to {most}"));
}
