namespace Underturf.Simulation.Trials;

/// <summary>A statement beside the truth.</summary>
/// <param name="Stations">Ids of the stations that it is about.</param>
/// <param name="Top">The class that it holds likeliest; nothing to be done where the question closed by itself.</param>
/// <param name="Right">Whether that class is right.</param>
public sealed record ScoredStatement(IReadOnlyList<string> Stations, RepairClass Top, bool Right)
{
    /// <summary>It is about a station that was asked about at the start.</summary>
    public bool AtStart { get; init; }

    /// <summary>The probabilities that were stated; nothing where the question closed by itself.</summary>
    public StatedChances? Stated { get; init; }
}

/// <summary>What a statement and the two it is compared with give.</summary>
/// <param name="Top">To the class held likeliest.</param>
/// <param name="Truth">To what is right.</param>
/// <param name="TruthByRates">To what is right, by the practice book's rates alone.</param>
/// <param name="TruthByLimits">To what is right, by a table of fixed limits; nothing where no table was given.</param>
public sealed record StatedChances(double Top, double Truth, double TruthByRates, double? TruthByLimits);
