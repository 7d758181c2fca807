namespace Underturf.Reasoning.Water;

/// <summary>
/// A reading of the meter with several stations running, as it bears on each: the sum of what they give, less than alone because the pressure is drawn down.
/// To one of them the others are what their own notes say of them, as a mean and a spread. In the chance of all notes it is counted with the first of them alone.
/// </summary>
/// <param name="index">Of the reading among those of the meter.</param>
internal sealed class RunTogether(WaterReading reading, int index, SupplyWater supply, IReadOnlyList<StationWater> stations)
{
    private readonly Dictionary<(SupplyState Supply, string Station), (double Mean, double Variance)> given = [];
    private readonly Dictionary<(SupplyState Supply, string Station, double Mean), (double Share, double Spread)> shares = [];

    /// <summary>A supply in order.</summary>
    public SupplyState Sound => supply.States[0];

    public WaterReading Reading => reading;

    public int Index => index;

    /// <summary>The station with which it is counted.</summary>
    public string First => reading.Together[0];

    /// <summary>What the meter is expected to show with a station in a state.</summary>
    public Amount Expected(StationWater station, StationState state, SupplyState supplied)
    {
        var own = station.Gives(state, supplied, reading);
        var others = stations.Where(s => s != station).Select(s => Given(s, supplied)).ToList();
        var (mean, variance) = (own.Mean + others.Sum(o => o.Mean), own.Variance + others.Sum(o => o.Variance));
        var key = (supplied, station.Station, own.Mean);
        if (!shares.TryGetValue(key, out var share))
        {
            shares[key] = share = supply.Together(supplied, [own.Mean, .. others.Select(o => o.Mean)]);
        }

        return Amount.Like(mean * share.Share, Math.Sqrt((variance * share.Share * share.Share) + Math.Pow(mean * share.Spread, 2)));
    }

    private (double Mean, double Variance) Given(StationWater station, SupplyState state)
    {
        if (!given.TryGetValue((state, station.Station), out var known))
        {
            given[(state, station.Station)] = known = station.Gives(state, reading);
        }

        return known;
    }
}
