namespace Underturf.Reasoning.Water;

/// <summary>What is believed of the water, for whoever takes the property over.</summary>
/// <param name="Idle">What most likely runs with everything off, in words; nothing where nothing does, or nobody read.</param>
/// <param name="IdleProbability">Of that.</param>
/// <param name="Stations">In the order of the controllers and their terminals.</param>
public sealed record WaterReport(string? Idle, double? IdleProbability, WaterLoss? Lost, IReadOnlyList<StationBelief> Stations, IReadOnlyList<ShutLine> Shuts)
{
    /// <summary>What may run with everything off, likeliest first; several can at once.</summary>
    public IReadOnlyList<BelievedSource> Sources { get; init; } = [];

    /// <summary>What runs out of each lateral once its valve shuts, where heights are noted.</summary>
    public IReadOnlyList<LateralDrainage> Drainage { get; init; } = [];

    /// <summary>What is noted of meter and backflow device.</summary>
    public IReadOnlyList<DeviceLoss> Devices { get; init; } = [];

    /// <summary>States of the supply, likeliest first.</summary>
    public IReadOnlyList<BelievedState> Supply { get; init; } = [];
}

/// <summary>What a meter or a backflow device takes.</summary>
/// <param name="Name">"meter" or "backflow device".</param>
/// <param name="From">What that rests on.</param>
/// <param name="Pascals">Lost in it with the usual flow running.</param>
public sealed record DeviceLoss(string Name, string From, double Pascals, double AtCubicMetresPerSecond)
{
    /// <summary>"meter (3/4 in, as is usual of its size): 2.7 psi with 13.2 gpm running".</summary>
    public string Say(WaterSay say) => $"{Name} ({From}): {say.Pressure(Pascals)} with {say.Flow(AtCubicMetresPerSecond)} running";
}

/// <summary>Something that may run with everything off.</summary>
/// <param name="Fault">Its id in the practice book.</param>
/// <param name="Id">Of the valve, of the station whose valve nobody has found, or of the first pipe of a piece of mainline.</param>
public sealed record BelievedSource(string Fault, string Id, string Place, double Probability);

/// <summary>Faults that are there together; none for what is in order.</summary>
/// <param name="Faults">Ids of the practice book.</param>
public sealed record BelievedState(IReadOnlyList<string> Faults, double Probability);

/// <summary>What is believed of one station.</summary>
/// <param name="ReadCubicMetresPerSecond">As the meter showed it last, the station alone; null where nobody read.</param>
/// <param name="State">The likeliest, in words; nothing where nothing was read or seen of it.</param>
/// <param name="Probability">Of that.</param>
public sealed record StationBelief(string Station, string Number, IReadOnlyList<string> Waters, double? ReadCubicMetresPerSecond, string? State, double? Probability)
{
    /// <summary>Everything that is weighed, likeliest first; none where nothing was read or seen.</summary>
    public IReadOnlyList<BelievedState> States { get; init; } = [];

    /// <summary>What cans caught last; nothing where none were set out.</summary>
    public CaughtWater? Caught { get; init; }
}

/// <summary>What an isolation valve shuts off by itself.</summary>
/// <param name="Stations">Numbers of the stations that have no water then.</param>
/// <param name="ByPipes">True where pipes are noted that say so, false where somebody told it; nothing where nobody knows.</param>
/// <param name="StandsShut">It stands shut now.</param>
public sealed record ShutLine(string Id, string Name, IReadOnlyList<string> Stations, bool? ByPipes, bool StandsShut)
{
    /// <summary>Chance that it holds, by what the meter showed while it was shut; null where nobody has read.</summary>
    public double? Holds { get; init; }
}
