using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>The likeliest worlds of each explanation, standing for it: enough to foresee with, few enough to solve.</summary>
internal sealed class Sample
{
    private const int MostWorlds = 8;

    private readonly int[] starts;

    public Sample(IReadOnlyList<WorldGroup> groups)
    {
        Groups = groups;
        starts = new int[groups.Count + 1];
        var (worlds, weights) = (new List<World>(), new List<double>());
        for (var g = 0; g < groups.Count; g++)
        {
            var likely = groups[g].Worlds.Take(MostWorlds).ToList();
            var total = likely.Sum(w => w.Probability);
            worlds.AddRange(likely);
            weights.AddRange(likely.Select(w => w.Probability / total));
            starts[g + 1] = worlds.Count;
        }

        (Worlds, Weights) = (worlds, weights);
    }

    public IReadOnlyList<WorldGroup> Groups { get; }

    public IReadOnlyList<World> Worlds { get; }

    /// <summary>Of each world within its group; those of a group sum to one.</summary>
    public IReadOnlyList<double> Weights { get; }

    /// <summary>The group's chance of an outcome.</summary>
    public double Mean(int group, double[][] chances, int outcome)
    {
        var sum = 0.0;
        for (var i = starts[group]; i < starts[group + 1]; i++)
        {
            sum += Weights[i] * chances[i][outcome];
        }

        return sum;
    }
}
