using Underturf.FieldLog;
using Underturf.Planning.Rework;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Telling;

namespace Underturf.Cli;

/// <summary>A rework as text for a terminal: next step first.</summary>
internal static class ReworkText
{
    public static string Write(ReworkAnswer answer, bool us) => string.Join(Environment.NewLine, (IEnumerable<string>)
    [
        .. answer.Steps is [var next, ..] ? Next(next) : [answer.Shared.Count == 0 ? "No station is known to be shared, and no check is open." : "Nothing is left to do."],
        .. answer.Shared.SelectMany(g => Shared(g, us)),
        .. answer.Valves.SelectMany(v => Valve(v, answer.Money)),
        .. answer.Missing.Select(m => $"! {m}"),
        .. answer.Valves.Count > 0 ? Sum(answer) : [],
        .. answer.Spares.Count > 0 ? ["", TextTable.Of(["conductor", "to", "proven", "used for"], answer.Spares.Select(Spare))] : (string[])[],
        .. answer.Terminals.Select(t => $"Free terminals of {t.Controller}: {(t.Free.Count == 0 ? "none" : Property.NumberRuns.Say(t.Free.Select(f => $"{f}")))}."),
        .. answer.Steps.Count > 1 ? Steps(answer) : [],
        .. answer.Numbers.Count > 0 ? ["", TextTable.Of(["was", "is", "waters", "since"], answer.Numbers.Select(n => new[] { n.Was, n.Now, n.Waters ?? string.Empty, n.On is { } on ? $"{on:yyyy-MM-dd}" : "to be" }))] : (string[])[],
        string.Empty,
        $"A spread is a standard deviation. With less water on one station, pressure and outlets' flow rise: measure both again. Engine {answer.Engine}, practice book {answer.Book}. Local codes and licensed practice prevail.",
    ]);

    private static IEnumerable<string> Next(ReworkStep step) =>
    [
        "NEXT STEP",
        $"  > {step.Say}, at {step.Where}: {step.Minutes:0.#} min",
        .. step.Expect is { } expect ? [$"    expect: {expect}"] : (string[])[],
        .. step.Caution.Length > 0 ? [$"    {step.Caution}"] : (string[])[],
    ];

    private static IEnumerable<string> Shared(SharedGroup group, bool us)
    {
        var grade = group.Grade == Grade.Inferred ? $"inferred, {Say.Share(group.Probability)} sure; {group.Count} valves {Say.Share(group.CountProbability)}" : group.Grade.ToString().ToLowerInvariant();
        yield return string.Empty;
        yield return $"[station {group.Number}] {group.Count} valves on one conductor ({grade}): {group.Needed} more {(group.Needed == 1 ? "conductor" : "conductors")} needed";
        yield return $"   before: {Seen(group.Before)}";
        yield return $"   after:  {Seen(group.After)}{(group.Minutes is { } minutes ? $"; {minutes:0.#} min of run each, one after the other: {minutes * group.Count:0.#} min in all" : string.Empty)}";
        if (group is { WaterBefore: { } before, WaterAfter: { } after })
        {
            yield return $"   water:  {ReworkWords.Water(before, us)} together; {ReworkWords.Water(after, us)} each alone, {ReworkWords.WaterFrom(before)}";
        }
    }

    private static string Seen(Foreseen? seen) => seen is null ? "cannot be worked out"
        : $"{ReworkWords.Electrical(seen)}, {Say.Amount(seen.WorstVolts, seen.WorstVoltsSpread, Dimension.Voltage)} at the worst{(seen.Company.Count > 0 ? $" (station {string.Join(", ", seen.Company)} on too)" : string.Empty)}: pulls in {Say.Share(seen.Opens)}";

    private static IEnumerable<string> Valve(ValveRework valve, string money)
    {
        yield return string.Empty;
        yield return $"{valve.Name}, parts from station {valve.Number} at {valve.JointName}{(valve.JointProbability < 0.995 ? $" ({Say.Share(valve.JointProbability)})" : string.Empty)}{(valve.Terminal is { } terminal ? $": terminal {terminal}" : ": stays")}";
        yield return TextTable.Of(["", "what", "min", money, "expected", "goes well", ""], valve.Alternatives.Select((a, i) =>
            new[] { i == valve.Chosen ? ">" : " ", a.Say, $"{a.Cost.Minutes:0.#}", $"{a.Cost.Price:0.00}", $"{a.Expected:0.00}", Say.Share(a.Chance), a.IsPossible ? string.Empty : a.Why ?? string.Empty }));
    }

    private static IEnumerable<string> Sum(ReworkAnswer answer) =>
    [
        string.Empty,
        $"All together {answer.Cost.Minutes:0.#} min, {answer.Cost.Work:0.00} {answer.Money} of work and {answer.Cost.Parts:0.00} {answer.Money} of parts and kept groups: {answer.Cost.Price:0.00} {answer.Money}; {answer.Expected:0.00} {answer.Money} expected with what is tried in vain. {PriceWords.Rework} "
            + (answer.IsBest ? "No other choice is expected to cost less." : $"No choice is expected to cost less than {answer.Bound:0.00} {answer.Money}."),
    ];

    private static string[] Spare(SpareInHand spare) => [spare.Name, spare.Place ?? "unknown", spare.IsProven ? "end to end under load" : $"no: {string.Join("; ", spare.Missing)}", spare.UsedFor ?? string.Empty];

    private static IEnumerable<string> Steps(ReworkAnswer answer) =>
        ["", "STEPS", .. answer.Steps.SelectMany((s, i) => new[] { $"  {i + 1}. {s.Where}: {s.Say}" }.Concat(s.Expect is { } expect ? [$"     expect: {expect}"] : []))];
}
