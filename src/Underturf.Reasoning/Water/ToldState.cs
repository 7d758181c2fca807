namespace Underturf.Reasoning.Water;

/// <summary>States of a station that come to the same words, as one.</summary>
internal sealed record ToldState(StationState State, double Share)
{
    /// <summary>Likeliest first.</summary>
    /// <param name="index">Number of the station among those of which anything is noted.</param>
    public static List<ToldState> Of(WaterBelief belief, int index)
    {
        var station = belief.Stations[index];
        return
        [
            .. station.States
                .Select((s, k) => (State: s, Share: belief.SharesOf(index)[k]))
                .GroupBy(s => string.Join(" + ", station.Now(s.State).Select(f => f.Id).Order(StringComparer.Ordinal)) + (s.State.Wiring is { Valves: 1, StaysShut: false } ? string.Empty : $" wiring {s.State.Wiring.Valves} {s.State.Wiring.StaysShut}"))
                .Select(g => new ToldState(g.MaxBy(s => s.Share).State, g.Sum(s => s.Share)))
                .OrderByDescending(t => t.Share),
        ];
    }

    public string Words(StationWater station)
    {
        var words = station.Now(State).Select(f => f.Say).ToList();
        if (State.Wiring.StaysShut)
        {
            words.Add("the valve stays shut for want of current, as the wiring has it");
        }
        else if (State.Wiring.Valves > 1)
        {
            words.Add($"{State.Wiring.Valves} valves open together, as the wiring has it");
        }

        return words.Count > 0 ? string.Join("; ", words) : "nothing wrong: it gives what it may give";
    }
}
