using Underturf.Numerics;

namespace Underturf.Reasoning.Moves;

/// <summary>Chances of each outcome of a move in each world: rows are worlds, columns outcomes.</summary>
internal sealed class Outcomes
{
    private const int Bins = 10;

    public Outcomes(double[][] chances) => Chances = chances;

    public IReadOnlyList<double[]> Chances { get; }

    /// <summary>A reading's outcomes: over-range, and bins between the values that the worlds predict.</summary>
    /// <param name="most">The largest value on the display.</param>
    /// <param name="predictions">Mean and standard deviation in each world; nothing where anything may be shown.</param>
    public static Outcomes OfReading(IReadOnlyList<(double Mean, double Sigma, bool IsOpen)?> predictions, ReadOnlySpan<double> belief, double most)
    {
        var edges = Edges(predictions, belief, most);
        return new Outcomes([.. predictions.Select(p => Row(p, edges, most))]);
    }

    /// <summary>Edges half-way between neighbouring predictions that an instrument can tell apart, the weightiest gaps first.</summary>
    private static double[] Edges(IReadOnlyList<(double Mean, double Sigma, bool IsOpen)?> predictions, ReadOnlySpan<double> belief, double most)
    {
        var known = new List<(double Mean, double Sigma, double Weight)>();
        for (var i = 0; i < predictions.Count; i++)
        {
            if (predictions[i] is { IsOpen: false } p && p.Mean < most)
            {
                known.Add((p.Mean, p.Sigma, belief[i]));
            }
        }

        known.Sort((a, b) => a.Mean.CompareTo(b.Mean));
        var gaps = new List<(double Edge, double Worth)>();
        for (var i = 1; i < known.Count; i++)
        {
            var apart = (known[i].Mean - known[i - 1].Mean) / (known[i].Sigma + known[i - 1].Sigma + double.Epsilon);
            if (apart > 0.25)
            {
                gaps.Add(((known[i].Mean + known[i - 1].Mean) / 2, Math.Min(apart, 4) * Math.Min(Side(known, 0, i), Side(known, i, known.Count))));
            }
        }

        return [.. gaps.OrderByDescending(g => g.Worth).Take(Bins - 1).Select(g => g.Edge).Order()];
    }

    private static double Side(List<(double Mean, double Sigma, double Weight)> known, int from, int to) =>
        known.Skip(from).Take(to - from).Sum(k => k.Weight);

    private static double[] Row((double Mean, double Sigma, bool IsOpen)? prediction, double[] edges, double most)
    {
        var row = new double[edges.Length + 2];
        if (prediction is not { } p)
        {
            Array.Fill(row, 1.0 / row.Length);
            return row;
        }

        if (p.IsOpen)
        {
            row[^1] = 1;
            return row;
        }

        var below = 0.0;
        for (var i = 0; i < edges.Length; i++)
        {
            var cdf = Normal.Cdf((edges[i] - p.Mean) / p.Sigma);
            row[i] = cdf - below;
            below = cdf;
        }

        // Edges never lie above the display's most, so what is beyond it is all in the last bin.
        row[^1] = Math.Min(1 - below, Normal.Cdf((p.Mean - most) / p.Sigma));
        row[edges.Length] = 1 - below - row[^1];
        return row;
    }
}
