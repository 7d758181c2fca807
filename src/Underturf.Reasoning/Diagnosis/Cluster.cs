using Underturf.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Stations tied together by readings between them (most stand alone), with every joint state of their private suspects and its weight on
/// the grid of coil levels.
/// </summary>
internal sealed class Cluster
{
    public required IReadOnlyList<string> Stations { get; init; }

    public required IReadOnlyList<Evidence> Evidence { get; init; }

    public required IReadOnlyList<Joint> Joints { get; init; }

    /// <summary>log of the sum over joints, for each coil level.</summary>
    public required double[] LogTotal { get; init; }

    /// <summary>One suspect for each station, with log(prior * likelihood) for each coil level.</summary>
    /// <param name="LogPrior">log of the prior probability.</param>
    internal sealed record Joint(IReadOnlyList<Suspect> Suspects, double LogPrior, double[] LogWeight)
    {
        public bool IsSound => Suspects.All(s => s.Fault is null);
    }

    /// <summary>log(sum over joints) for each level.</summary>
    public static double[] Total(IReadOnlyList<Joint> joints, int levels)
    {
        var total = new double[levels];
        var column = new double[joints.Count];
        for (var i = 0; i < levels; i++)
        {
            for (var j = 0; j < joints.Count; j++)
            {
                column[j] = joints[j].LogWeight[i];
            }

            total[i] = LogMath.LogSumExp(column);
        }

        return total;
    }
}
