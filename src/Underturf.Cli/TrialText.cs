using System.Text;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Simulation;
using Underturf.Simulation.Trials;

namespace Underturf.Cli;

/// <summary>Trials as text for a terminal.</summary>
internal static class TrialText
{
    /// <summary>What the technician did, move by move.</summary>
    public static string Diary(TrialResult trial)
    {
        var text = new StringBuilder();
        foreach (var (step, i) in trial.Steps.Select((s, i) => (s, i)))
        {
            var walked = step.WalkMinutes > 0 ? $" after {step.WalkMinutes:0.#} min walk" : string.Empty;
            text.AppendLine($"{i + 1,3}. {Deed(step.Deed)}{step.Action}, at {step.Where}: {step.Minutes:0.#} min{walked}");
            if (step.Seen.Length > 0)
            {
                text.AppendLine($"     seen: {step.Seen}");
            }

            if (step.Top is { } top)
            {
                text.AppendLine($"     then: {Say.Share(step.TopProbability)} {top}");
            }
        }

        foreach (var open in trial.StillOpen)
        {
            text.AppendLine($"Open: {open}");
        }

        text.AppendLine($"Really wrong: {Faults(trial.Truth)}");
        text.AppendLine($"Still wrong: {Faults(trial.Left)}");
        return text.ToString().TrimEnd();
    }

    private static string Faults(IReadOnlyList<TrueFault> faults) => faults.Count == 0 ? "nothing"
        : string.Join("; ", faults.Select(f => string.Join(", ", new[] { f.Fault, f.Station, f.Other, f.Place }.Where(s => s is not null))));

    public static string Summary(IReadOnlyList<TrialResult> trials, PracticeBook book) => TextTable.Of(
        ["chosen by", "properties", "minutes", "of it walking", "moves", "wrong repairs", "faults left", "loss in minutes"],
        trials.GroupBy(t => t.Policy).Select(g => new[]
        {
            g.Key,
            $"{g.Count()}",
            $"{g.Average(t => t.WorkedMinutes):0.0}",
            $"{g.Average(t => t.WalkMinutes):0.0}",
            $"{g.Average(t => t.Moves):0.0}",
            $"{g.Average(t => t.WrongRepairs):0.00}",
            $"{g.Average(t => t.LeftOpen):0.00} of {g.Average(t => t.AskedAbout):0.00}",
            $"{g.Average(t => t.LossMinutes(book)):0.0}",
        }));

    private static string Deed(TrialDeed deed) => deed switch
    {
        TrialDeed.Repair => "RIGHT: ",
        TrialDeed.WrongRepair => "WRONG: ",
        _ => string.Empty,
    };
}
