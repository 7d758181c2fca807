using Underturf.Property.Practice;

namespace Underturf.Simulation.Trials;

/// <summary>Trials over many made-up properties, each property by every policy. Deterministic in the seeds.</summary>
public static class TrialStudy
{
    /// <summary>Reporting seeds begin here.</summary>
    public const ulong FirstSeed = 20_001;

    /// <summary>Seeds for tuning, and for counting the table of fixed limits, begin here.</summary>
    public const ulong FirstTuningSeed = 6_001;

    /// <summary>One property by several policies: the same truth and the same first visit for all.</summary>
    public static IReadOnlyList<TrialResult> One(ulong seed, WorldShape shape, PracticeBook book, IReadOnlyList<string> policies, LimitTable? limits = null)
    {
        var world = WorldGenerator.Make(seed, book, shape);
        return [.. policies.Select(p => Trial.Run(world, seed, p, shape, limits))];
    }
}
