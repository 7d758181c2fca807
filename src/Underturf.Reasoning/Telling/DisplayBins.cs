using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>What an instrument is expected to show in one world; anything at all where <paramref name="IsAnything"/>.</summary>
internal readonly record struct Expected(double Mean, double Sigma, bool IsOpen, bool IsAnything)
{
    public bool IsFigure => !IsOpen && !IsAnything;
}

/// <summary>An instrument's displays cut into bins, over-range last, and the chance of each.</summary>
internal sealed class DisplayBins(InstrumentPractice instrument, UnmodelledPractice unmodelled, double[] edges)
{
    /// <summary>At most so many bins where two worlds are told apart, and so many that a technician is told.</summary>
    private const int MostFine = 40, MostTold = 5;

    /// <summary>Standard deviations from a prediction where its fine edges lie.</summary>
    private static readonly double[] cuts = [-2, -1, -0.33, 0.33, 1, 2];

    /// <summary>Edges about each prediction, thinned evenly.</summary>
    public static double[] FineEdges(IReadOnlyList<Expected> expected, double most)
    {
        var all = expected.Where(e => e.IsFigure)
            .SelectMany(e => cuts.Select(c => e.Mean + (c * e.Sigma)))
            .Where(x => x > 0 && x < most)
            .Order()
            .ToList();
        var every = Math.Max(1, (int)Math.Ceiling((double)all.Count / MostFine));
        return [.. all.Where((_, i) => i % every == 0)];
    }

    /// <summary>Round figures between predictions that lie clearly apart, the gaps with most on their lighter side first.</summary>
    public static double[] ToldEdges(IReadOnlyList<(Expected Expected, double Weight)> worlds, double most)
    {
        var known = worlds.Where(w => w.Expected.IsFigure && w.Expected.Mean < most).OrderBy(w => w.Expected.Mean).ToList();
        var gaps = new List<(double Edge, double Worth)>();
        var (below, total) = (0.0, known.Sum(k => k.Weight));
        for (var i = 1; i < known.Count; i++)
        {
            below += known[i - 1].Weight;
            var (low, high) = (known[i - 1].Expected, known[i].Expected);
            if (high.Mean - low.Mean > low.Sigma + high.Sigma)
            {
                gaps.Add((Round(low.Mean, high.Mean), Math.Min(below, total - below)));
            }
        }

        return [.. gaps.OrderByDescending(g => g.Worth).Take(MostTold - 1).Select(g => g.Edge).Order()];
    }

    public double[] Row(Expected expected)
    {
        var row = new double[edges.Length + 2];
        var below = 0.0;
        for (var i = 0; i < edges.Length; i++)
        {
            var to = Below(edges[i], expected);
            row[i] = to - below;
            below = to;
        }

        var within = Below(instrument.Most, expected);
        row[^2] = Math.Max(0, within - below);
        row[^1] = 1 - Math.Max(within, below);
        return row;
    }

    /// <summary>"under 20 ohm", "20 ohm to 28 ohm", "over 28 ohm", "over range".</summary>
    public IReadOnlyList<string> Words()
    {
        string Figure(double si) => Say.Figure(si, instrument.Dimension);
        return edges.Length == 0
            ? ["a figure", "over range"]
            : [$"under {Figure(edges[0])}", .. edges.Skip(1).Select((e, i) => $"{Figure(edges[i])} to {Figure(e)}"), $"over {Figure(edges[^1])}", "over range"];
    }

    /// <summary>Chance to show less than a figure.</summary>
    private double Below(double si, Expected expected)
    {
        if (expected.IsOpen)
        {
            return 0;
        }

        var over = instrument.Dimension == Dimension.Resistance ? unmodelled.OverRange : 0;
        return expected.IsAnything
            ? (1 - over) * Math.Clamp(Math.Log(si / instrument.Least) / Math.Log(instrument.Most / instrument.Least), 0, 1)
            : Normal.Cdf((si - expected.Mean) / Math.Max(expected.Sigma, 1e-9));
    }

    /// <summary>The roundest figure in the middle half of a gap.</summary>
    private static double Round(double low, double high)
    {
        var (middle, room) = ((low + high) / 2, (high - low) / 4);
        var unit = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(middle, 1e-9))));
        for (var digits = 0; digits < 4; digits++, unit /= 10)
        {
            var round = Math.Round(middle / unit) * unit;
            if (round > 0 && Math.Abs(round - middle) < room)
            {
                return round;
            }
        }

        return middle;
    }
}
