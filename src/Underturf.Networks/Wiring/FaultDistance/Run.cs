namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>A conductor from the near end, where the instrument stands, to its far end, with a sound one in the same trench.</summary>
/// <remarks>
/// Both conductors of a stretch have one length, so its error is one unknown. The temperature of the copper is one more, shared by all
/// stretches, and so is the error of the capacitance a metre.
/// </remarks>
public sealed record Run
{
    /// <summary>In order from the near end.</summary>
    public required IReadOnlyList<Stretch> Stretches { get; init; }

    /// <summary>Standard deviation of the temperature of all copper together.</summary>
    public double TemperatureSpreadKelvins { get; init; }

    /// <summary>Standard deviation of the logarithm of all capacitances a metre together.</summary>
    public double CapacitanceSpreadShare { get; init; }

    public double LengthMetres => Stretches.Sum(s => s.LengthMetres);
}

/// <summary>How the conductor is left at its far end while a reading is taken.</summary>
public enum FarEnd
{
    /// <summary>Lifted from its splice and touching nothing.</summary>
    Free,

    /// <summary>Lifted from its splice and joined to the return conductor, and only to that.</summary>
    Joined,

    /// <summary>Still on its coil or splice, so that other paths share the current.</summary>
    Loaded,
}
