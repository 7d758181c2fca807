using Underturf.FieldLog;
using Underturf.Planning.Choosing;
using Underturf.Planning.Rework;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Simulation;

/// <summary>How a rework ended.</summary>
/// <param name="Valves">Valves that shared a conductor, but for those that keep it.</param>
/// <param name="Alone">Of them those that run alone in the end, open, with what they share of it gone.</param>
/// <param name="Kept">Those of which the plan said beforehand that they stay, and why.</param>
/// <param name="Unsaid">Those that neither run alone nor were said to stay.</param>
/// <param name="Replans">How often a conductor was no good and the plan was made anew.</param>
/// <param name="Failed">Checks that did not show what was said.</param>
/// <param name="Offs">Readings of checks, in standard deviations from what was said.</param>
/// <param name="Spoiled">Stations that ran before and do not any more.</param>
public sealed record ReworkOutcome(ulong Seed, int Valves, int Alone, int Kept, int Unsaid, int Replans, int Failed, IReadOnlyList<double> Offs, int Spoiled, int Numbers, decimal Price, bool IsBest, IReadOnlyList<string> Told)
{
    /// <summary>The log at the end.</summary>
    public required LogDocument Log { get; init; }

    /// <summary>Why valves stay, as the plan says it.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }
}

/// <summary>Plans, does the first step in the ground, notes what is seen, and plans anew until nothing is left to do.</summary>
public static class ReworkTrial
{
    private const int MostSteps = 80;

    private static readonly DateTimeOffset Afternoon = new(2031, 4, 3, 8, 0, 0, TimeSpan.FromHours(-6));

    public static ReworkOutcome Run(ulong seed, PracticeBook book, IChoiceSolver? solver = null)
    {
        var scene = ReworkScene.Make(seed, book);
        var ground = new ReworkedGround(scene.Truth, scene.Spares, null, WorldGenerator.Place);
        var keeper = LogKeeper.After(scene.Log);
        var (minute, told, failed, replans) = (0, new List<string>(), new HashSet<string>(StringComparer.Ordinal), 0);
        var reasons = new List<string>();
        var kept = new Dictionary<string, int>(StringComparer.Ordinal);
        var plan = ReworkPlan.Of(Notebook.Open(keeper.Log(), book), solver);
        var (first, isBest) = (plan, plan.IsBest);
        for (var step = Next(plan, failed); step is not null && minute < MostSteps; step = Next(plan, failed))
        {
            Remember(plan, step, kept, reasons);
            var notes = ground.Do(step);
            var bad = step.IsCheck && notes == step.Failed;
            told.Add($"{step.Say}{(bad ? ": NOT AS SAID" : string.Empty)}");
            replans += bad && step.Station is null ? 1 : 0;
            if (bad && step.Station is { } station)
            {
                failed.Add(station);
            }

            foreach (var fact in notes)
            {
                keeper.Note("crew", Afternoon.AddMinutes(minute), fact);
            }

            minute++;
            plan = ReworkPlan.Of(Notebook.Open(keeper.Log(), book), solver);
            isBest &= plan.IsBest;
        }

        return Outcome(seed, scene, ground, kept, replans, failed.Count, first.Expected, isBest, told) with { Log = keeper.Log(), Reasons = reasons };
    }

    /// <summary>A station that failed its check waits for a diagnosis.</summary>
    private static ReworkStep? Next(ReworkAnswer plan, HashSet<string> failed) => plan.Steps.FirstOrDefault(s => s.Station is not { } station || !failed.Contains(station));

    /// <summary>Valves of a station that are noted to stay.</summary>
    private static void Remember(ReworkAnswer plan, ReworkStep step, Dictionary<string, int> kept, List<string> reasons)
    {
        foreach (var fact in step.Passed.OfType<ReworkStepFact>().Where(f => f.Did == ReworkDeeds.Kept))
        {
            kept[fact.Station] = plan.Valves.Count(v => v.Station == fact.Station && v.Terminal is null);
            reasons.AddRange(plan.Missing.Where(m => plan.Valves.Any(v => v.Station == fact.Station && v.Terminal is null && m.StartsWith(v.Name, StringComparison.Ordinal))));
        }
    }

    private static ReworkOutcome Outcome(ulong seed, ReworkScene scene, ReworkedGround ground, Dictionary<string, int> kept, int replans, int failed, decimal price, bool isBest, List<string> told)
    {
        var (valves, alone, unsaid) = (0, 0, 0);
        foreach (var fault in scene.Truth.Faults)
        {
            var runs = ground.Truth.Paths.Where(p => p.Station != fault.Station && fault.Waters.Contains(ground.PlaceOf(p.Station))).ToList();
            var own = runs.Count(r => IsAlone(ground.Run(r.Station)));
            valves += fault.MoreCoils;
            alone += own;
            unsaid += Math.Max(0, fault.MoreCoils - own - kept.GetValueOrDefault(fault.Station!));
        }

        var before = new VirtualTechnician(scene.Truth, null, 0);
        var spoiled = scene.Truth.Paths.Count(p => before.Run(p.Station, WorldGenerator.Place).Behaved == "opens" && ground.Run(p.Station).Behaved != "opens");
        return new ReworkOutcome(seed, valves, alone, valves - alone - unsaid, unsaid, replans, failed, ground.Offs, spoiled, scene.Truth.Paths.Count, price, isBest, told) { Log = scene.Log, Reasons = [] };
    }

    private static bool IsAlone(TestFact run) => run is { Behaved: "opens", Watered.Count: 1 };
}
