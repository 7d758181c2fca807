using Underturf.Quantities;
using Underturf.Reasoning.Moves;
using Underturf.Reasoning.Water;

namespace Underturf.Reasoning;

/// <summary>What the notes say of the water.</summary>
public sealed partial class Notebook
{
    private WaterBelief? wet;

    /// <summary>What water comes in, what each station takes of it, and what runs though nothing should.</summary>
    /// <param name="stations">Labels or ids of those that run together; each alone where nothing is said.</param>
    public Outcome<FlowAnswer> Flow(params IReadOnlyList<string> stations)
    {
        using var turn = asking.EnterScope();
        var ids = new List<string>();
        foreach (var name in stations)
        {
            var found = StationFinder.Find(matter.View, name);
            if (!found.Succeeded)
            {
                return found.Problem!;
            }

            ids.Add(found.Value);
        }

        var belief = Wet();
        return new FlowWriter(belief, new LeakQuestion(belief, new Walks(matter)).Write(), SharedById()).Write([.. ids.Distinct()]);
    }

    /// <summary>What a station gives with all the valves that it runs, and with some of them, nothing broken.</summary>
    /// <param name="station">Id.</param>
    /// <param name="parts">How many of the valves, each time.</param>
    public IReadOnlyList<Outcome<PartFlow>> FlowOfParts(string station, int valves, params IReadOnlyList<int> parts)
    {
        using var turn = asking.EnterScope();
        var writer = new FlowWriter(Wet(), null, SharedById());
        return [.. parts.Select(part => writer.Part(station, valves, part))];
    }

    /// <summary>What is believed of the water, and which isolation valve shuts off what; nothing where nobody noted any of it.</summary>
    public WaterReport? Water()
    {
        using var turn = asking.EnterScope();
        if (!water.IsNoted && History.Now.IsolationValves.Count == 0 && History.Now.WaterSupplies.Keys.All(s => water.DevicesOf(s).All.Count == 0) && History.Now.Stations.Keys.All(s => water.Drainage.Of(s).Count == 0))
        {
            return null;
        }

        var belief = Wet();
        return new WaterReporter(belief, new LeakQuestion(belief, new Walks(matter)).Write()).Write();
    }

    /// <summary>What to shut so that a place has no pressure, what goes dry, and how to prove it.</summary>
    /// <param name="place">Label or id of a valve, station, box, fitting, pipe or isolation valve.</param>
    /// <param name="at">Where one is: label or id of a place; the controller where nothing is said.</param>
    public Outcome<IsolationAnswer> Isolate(string place, string? at = null)
    {
        using var turn = asking.EnterScope();
        return MakingDry.Of(water, new Walks(matter), place, at);
    }

    private Dictionary<string, SharedStation> SharedById() => Shared().ToDictionary(s => s.Station, StringComparer.Ordinal);

    /// <summary>What is believed of the water, given what is believed of the wires; the same for every asker.</summary>
    private WaterBelief Wet() => wet ??= new WaterBelief(water, beliefs.Value.Values
        .SelectMany(belief => belief.Stations.Keys.Where(water.IsNotedOf).Select(station => (Station: station, Belief: belief)))
        .ToDictionary(s => s.Station, s => WiringWater.Of(s.Station, s.Belief, matter), StringComparer.Ordinal));
}
