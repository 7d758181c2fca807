using System.CommandLine;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Simulation;
using Underturf.Simulation.Trials;

namespace Underturf.Cli.Commands;

/// <summary>A virtual technician works through made-up properties by the notebook's moves.</summary>
internal static class TrialCommand
{
    private const int LeastStations = 10, MostStations = 300, MostFaults = 6, MostProperties = 1000;

    public static Command Make()
    {
        var stations = new Option<int?>("--stations") { Description = $"How many stations, {LeastStations} to {MostStations}, in a whole property; a small one of 6 to 20 where nothing is said." };
        var faults = new Option<int?>("--faults") { Description = $"How many faults, 1 to {MostFaults}; drawn where nothing is said." };
        var seed = new Option<long>("--seed") { Description = "Of the first property; the next has the next.", DefaultValueFactory = _ => 1 };
        var properties = new Option<int>("--properties") { Description = $"How many properties, 1 to {MostProperties}.", DefaultValueFactory = _ => 1 };
        var rules = new Option<bool>("--rules") { Description = "The rules of thumb too, on the same properties." };
        var (book, json) = (Arguments.Book(), Arguments.Json());
        var command = new Command("trial", "Let a virtual technician work through made-up properties by the notebook's moves, and count the minutes.") { stations, faults, seed, properties, rules, book, json };
        command.SetAction(parsed =>
        {
            var practice = Files.Book(parsed.GetValue(book));
            var shape = WorldShape.Trial(
                Within("--stations", parsed.GetValue(stations), LeastStations, MostStations),
                Within("--faults", parsed.GetValue(faults), 1, MostFaults));
            var count = Within("--properties", parsed.GetValue(properties), 1, MostProperties)!.Value;
            var policies = parsed.GetValue(rules) ? Trial.PolicyNames : [Trial.PolicyNames[0]];
            var first = From(parsed.GetValue(seed));
            var trials = Enumerable.Range(0, count)
                .SelectMany(i => TrialStudy.One(first + (ulong)i, shape, practice, policies))
                .ToList();
            Console.WriteLine(parsed.GetValue(json) ? TrialJson.Write(trials, practice) : Text(trials, practice));
            return ExitCode.Good;
        });
        return command;
    }

    private static string Text(List<TrialResult> trials, PracticeBook book)
    {
        var diary = trials.Count(t => t.Policy == Trial.PolicyNames[0]) == 1 ? $"{TrialText.Diary(trials[0])}\n{End(trials[0])}\n\n" : string.Empty;
        return diary + TrialText.Summary(trials, book);
    }

    private static string End(TrialResult trial) => trial.End switch
    {
        TrialEnd.NothingOpen => "No question is open.",
        TrialEnd.NothingWorthwhile => "Questions are open, and no move is worth its minutes.",
        _ => $"Ended after {Trial.MostSteps} steps, with questions open.",
    };

    private static ulong From(long seed) => seed >= 0 ? (ulong)seed : throw new Refusal(new Problem("--seed", $"is {seed}", "Give a whole number from 0 on"));

    private static int? Within(string option, int? value, int least, int most) => value is not { } given || (given >= least && given <= most)
        ? value
        : throw new Refusal(new Problem(option, $"is {given}", $"Give a whole number from {least} to {most}"));
}
