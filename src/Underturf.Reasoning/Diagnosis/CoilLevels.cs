using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// The property's usual coil is one unknown that all stations share. It is integrated on a grid of its logarithm, relative to the practice
/// book's ohms.
/// </summary>
internal sealed class CoilLevels
{
    private const int Count = 61;
    private const double Reach = 3;

    public CoilLevels(PracticeBook book)
    {
        LogLevels = [.. Enumerable.Range(0, Count).Select(i => book.Coil.LevelSpread * Reach * ((2.0 * i / (Count - 1)) - 1))];
        var weights = LogLevels.Select(l => Math.Exp(-0.5 * Math.Pow(l / book.Coil.LevelSpread, 2))).ToArray();
        LogPrior = [.. weights.Select(w => Math.Log(w / weights.Sum()))];
    }

    public double[] LogLevels { get; }

    public double[] LogPrior { get; }
}
