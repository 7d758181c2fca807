using System.CommandLine;
using Underturf.Quantities;
using Underturf.Simulation;
using Underturf.Simulation.Engines;
using Underturf.Simulation.SecondEngine;

namespace Underturf.Cli.Commands;

/// <summary>A made-up property with a known truth, to try the tool on.</summary>
internal static class SimulateCommand
{
    private const int LeastStations = 10, MostStations = 300, MostFaults = 6;

    public static Command Make()
    {
        var target = new Option<DirectoryInfo>("--out") { Description = "Where to put log.jsonl and truth.json.", Required = true };
        var stations = new Option<int>("--stations") { Description = $"How many stations, {LeastStations} to {MostStations}.", DefaultValueFactory = _ => 40 };
        var faults = new Option<int?>("--faults") { Description = $"How many faults, 1 to {MostFaults}; drawn where nothing is said." };
        var seed = new Option<long>("--seed") { Description = "The same seed makes the same property.", DefaultValueFactory = _ => 1 };
        var share = new Option<double>("--second-engine") { Description = "Share of the readings that ngspice solves, 0 to 1." };
        var book = Arguments.Book();
        var command = new Command("simulate", "Make up a property with known faults: a field log, and the truth apart from it.") { target, stations, faults, seed, share, book };
        command.SetAction(parsed =>
        {
            var shape = WorldShape.Whole(
                (int)Within("--stations", parsed.GetValue(stations), LeastStations, MostStations),
                parsed.GetValue(faults) is { } wrong ? (int)Within("--faults", wrong, 1, MostFaults) : null) with
            {
                SecondEngineShare = Within("--second-engine", parsed.GetValue(share), 0, 1),
            };
            var (number, folder) = ((ulong)parsed.GetValue(seed), parsed.GetRequiredValue(target));
            var world = Good(WorldGenerator.Make(number, Files.Book(parsed.GetValue(book)), shape, Second(shape)));
            Write(world, number, folder);
            Console.WriteLine($"{world.Log.Entries.Count} notes of {shape.Stations} stations in log.jsonl; what is really wrong ({world.Faults.Count}) in truth.json.");
            return ExitCode.Good;
        });
        return command;
    }

    private static void Write(World world, ulong seed, DirectoryInfo folder)
    {
        Files.MakeFolder(folder);
        Files.Write(Path.Combine(folder.FullName, "log.jsonl"), world.Log.ToBytes().Span);
        Files.Write(Path.Combine(folder.FullName, "truth.json"), world.TruthBytes(seed));
    }

    /// <summary>Only where it is asked for: a property without it needs no other program.</summary>
    private static ICircuitEngine? Second(WorldShape shape) => shape.SecondEngineShare > 0 ? Good(NgspiceEngine.Start()) : null;

    private static T Good<T>(Outcome<T> outcome) => outcome.Succeeded ? outcome.Value : throw new Refusal(outcome.Problem!);

    private static double Within(string option, double value, double least, double most) => value >= least && value <= most
        ? value
        : throw new Refusal(new Problem(option, $"is {value}", $"Give a number from {least} to {most}"));
}
