namespace Underturf.Reasoning.Water;

/// <summary>Of the valves that a station runs, alike as far as anybody knows, those that do run.</summary>
/// <param name="All">Whose outlets the station's are.</param>
/// <param name="Part">Of them.</param>
internal readonly record struct ValvesRunning(int All, int Part)
{
    public static ValvesRunning One { get; } = new(1, 1);

    public static ValvesRunning Of(int all) => new(all, all);

    /// <summary>Of the station's outlets.</summary>
    public double Share => (double)Part / All;
}
