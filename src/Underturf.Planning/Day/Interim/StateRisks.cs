using Underturf.FieldLog;
using Underturf.Property.Practice;

namespace Underturf.Planning.Day.Interim;

/// <summary>What the states in which places were left do to a station that is run, and what stands shut by hand.</summary>
internal sealed class StateRisks(Grounds grounds)
{
    private readonly IReadOnlyDictionary<string, string> dry = grounds.Notebook.DryNow();

    public IEnumerable<RunRisk> Of(string station)
    {
        foreach (var (left, place, state) in grounds.Temporary)
        {
            if (Chance(left.Fact, place, state, station) is var chance && chance > 0)
            {
                yield return new RunRisk($"{grounds.View.Name(place)} left as \"{Reasoning.Diagnosis.Say.Clipped(left.Fact.State)}\": {state.Harm.Say}", chance, state.Harm, state.Dry ? 1 : 0, state.Dry && chance >= 1, Told: left.Fact.Told, Place: place);
            }
        }

        if (dry.TryGetValue(station, out var shut))
        {
            yield return new RunRisk($"{grounds.View.Name(shut)} stands shut", 1, new HarmPractice(string.Empty, string.Empty, 0, 0, 0), 1, true);
        }
    }

    /// <summary>One conductor of those that pass is meant where nobody says which.</summary>
    private double Chance(LeftAsFact left, string place, StatePractice state, string station)
    {
        if (left.Stations.Count > 0)
        {
            return left.Stations.Select(grounds.View.Identity.Of).Contains(station) ? 1 : 0;
        }

        var reached = Reached(place, state.Reach);
        return !reached.Contains(station) ? 0 : state.Reach == StateReach.Wires ? 1.0 / reached.Count : 1;
    }

    private HashSet<string> Reached(string place, StateReach reach) =>
    [
        .. grounds.View.Controllers.ContainsKey(place) ? grounds.View.Stations.Where(s => grounds.View.Identity.Of(s.Value.Controller) == place).Select(s => s.Key)
            : reach == StateReach.Wires ? grounds.Notebook.Paths.Values.Where(p => p.Legs.Any(l => l.To == place) || p.Valves.Any(v => v.Place == place)).Select(p => p.Station)
            : reach == StateReach.Valves ? grounds.View.Valves.Where(v => v.Key == place || (v.Value.Box is { } box && grounds.View.Identity.Of(box) == place)).Select(v => v.Value.Station).OfType<string>().Select(grounds.View.Identity.Of)
            : [],
    ];
}
