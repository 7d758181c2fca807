using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>
/// What is usual at a station of this property: a normal mean with a normal prior, learned from the other stations' readings, and a station's own
/// difference from it; all of logarithms.
/// </summary>
/// <param name="logs">ln of the last reading of each station.</param>
/// <param name="usual">What is usual where nothing was read.</param>
/// <param name="differ">How far the stations of one property differ.</param>
internal sealed class LearnedUsual(IReadOnlyDictionary<string, double> logs, LogNormal usual, double differ)
{
    /// <summary>A fault of the supply bears on all stations alike: what the others showed has its part in it already, so only what is usual is moved by it.</summary>
    /// <param name="factor">Of the supply's fault; null for none.</param>
    public LogNormal Of(string station, Spread? factor)
    {
        var (shift, spread) = factor is null ? (0, usual.LogSpread) : (Math.Log(factor.Median), double.Hypot(usual.LogSpread, factor.LogSpread));
        var prior = 1 / (spread * spread);
        var others = logs.Where(l => l.Key != station).Select(l => l.Value).ToList();
        var precision = prior + (others.Count / (differ * differ));
        var mean = ((prior * (Math.Log(usual.Median) + shift)) + (others.Sum() / (differ * differ))) / precision;
        return new LogNormal(Math.Exp(mean), Math.Sqrt((1 / precision) + (differ * differ)));
    }
}
