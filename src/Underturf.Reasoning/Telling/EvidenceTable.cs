using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>
/// For an explanation, each note beside what it predicts and how strongly the note speaks for or against it: how much likelier it is under the
/// explanation as it is told than under all others, nothing broken included, as these stood before any note of the station.
/// </summary>
internal sealed class EvidenceTable(Case owner, Subject subject, IReadOnlyList<WorldGroup> groups)
{
    private const int MostOwn = 12, MostOthers = 40;

    private static readonly World sound = new([], 0);

    private readonly Dictionary<(World World, Evidence Evidence), double> chances = [];

    public IReadOnlyList<EvidenceLine> Lines(WorldGroup group, IReadOnlyList<Evidence> evidence)
    {
        var own = group.Worlds.Take(MostOwn).Select(w => (w, w.Probability)).ToList();
        var others = groups.Where(g => g != group)
            .SelectMany(g => g.Worlds)
            .Concat(groups.Any(g => g.Worlds[0].IsSound) ? [] : [sound])
            .Select(w => (World: w, Prior: Prior(w)))
            .OrderByDescending(w => w.Prior)
            .Take(MostOthers)
            .ToList();
        return [.. evidence.Select(e => new EvidenceLine(
            e.Entry.ToString(),
            e.What,
            e.Predicted(group.Worlds[0].Suspects, subject.Outlook, owner.Cures),
            e.Observed,
            others.Count == 0 ? 0 : Math.Clamp(Math.Log10(Math.Max(Chance(own, e), 1e-30) / Math.Max(Chance(others, e), 1e-30)), -9, 9)))];
    }

    /// <summary>Odds against everything being sound.</summary>
    private static double Prior(World world) => world.Suspects.Aggregate(1.0, (odds, s) => odds * s.Weight);

    private double Chance(IReadOnlyList<(World World, double Weight)> worlds, Evidence evidence) =>
        worlds.Sum(w => w.Weight * Chance(w.World, evidence)) / worlds.Sum(w => w.Weight);

    private double Chance(World world, Evidence evidence)
    {
        if (!chances.TryGetValue((world, evidence), out var chance))
        {
            chance = Math.Exp(evidence.LogChance(world.Suspects, subject.Outlook, owner.Cures));
            chances[(world, evidence)] = chance;
        }

        return chance;
    }
}
