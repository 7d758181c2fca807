using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;

namespace Underturf.FieldApp;

/// <summary>One thing to do while water runs: what it writes says whether it is done.</summary>
internal sealed record RunningStep(string Name, string Title, string Says, string Caution, Fact Writes);

/// <summary>What to do while water runs, the quickest first.</summary>
internal static class RunningSteps
{
    public static IReadOnlyList<RunningStep> Of(string place, PropertyHistory history)
    {
        var view = history.Now;
        return [.. view.Controllers.Keys.Select(c => Controller(c, view)), .. Valve(place, view), .. Isolation(place, history)];
    }

    private static RunningStep Controller(string id, PropertyView view) => new(
        "controller",
        $"{Wording.Sentence(view.Name(id))} off",
        "Switch it off or pull its transformer's plug. If the water stops, a programme ran it.",
        "Its supply side holds mains: keep out.",
        new LeftAsFact { Place = id, State = RunningWater.ControllerOff });

    /// <summary>What a hand can do at the valve; a place without one has none of it.</summary>
    private static IEnumerable<RunningStep> Valve(string place, PropertyView view)
    {
        var valves = Valves(place, view);
        if (valves.Count == 0)
        {
            yield break;
        }

        yield return new("bleed", "Bleed shut", "Turn the bleed screw of the valve in, by hand.", "No hands in water near a conductor that was not measured.", RunningWater.Noted(place, "bleed shut"));
        yield return new("coil", "Coil snug", "Turn the coil in by hand, no tool.", "", RunningWater.Noted(place, "coil snug"));
        foreach (var valve in valves)
        {
            yield return new("flow", $"Flow control down: {view.Name(valve)}", "Turn the stem on the bonnet in until the water stops.", "", new SettingFact { Of = valve, State = "shut" });
        }
    }

    private static IEnumerable<RunningStep> Isolation(string place, PropertyHistory history)
    {
        var view = history.Now;
        var dry = WaterDesk.CanBeDry(view, place) ? MakingDry.Of(history, TiedPlaces.Of(history, PracticeBook.Default), PracticeBook.Default, place) : (Quantities.Outcome<IsolationAnswer>?)null;
        if (dry is not { Succeeded: true, Value: var answer })
        {
            return view.WaterSupplies.Keys.Select(s => Shut(view.Name(s), s, "All water of the property is off then.", view));
        }

        var gone = (answer.Dry.Count == 0 ? "" : $" Dry then: {answer.SayDry}.") + (answer.SayMayGoDry is { } may ? $" May go dry too: {may}." : "");
        return answer.Stands.Concat(answer.Shut).Where(s => DryNotes.CanNote(s.Id, view)).Select(s => Shut(s.Name, s.Id, $"{Wording.Minutes(s.WalkMinutes + s.TurnMinutes)} to walk and turn.{gone}", view));
    }

    private static RunningStep Shut(string name, string id, string says, PropertyView view) =>
        new("isolation", $"Shut {name}", says, "Slowly, and tell those who drink from it.", DryNotes.Shut(id, view));

    private static List<string> Valves(string place, PropertyView view) =>
        view.Valves.ContainsKey(place) ? [place]
        : view.Stations.ContainsKey(place) ? [.. view.ValvesOf(place).Select(v => v.Id)]
        : [.. view.Valves.Where(v => v.Value.Box is { } box && view.Identity.Of(box) == place).Select(v => v.Key).Order(NaturalOrder.Instance)];
}
