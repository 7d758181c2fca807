using System.Globalization;

namespace Underturf.References.Tests;

/// <summary>
/// The last two periods of a transient run of ngspice. Its steps are unequal, so means are integrals by the trapezoidal rule with the ends
/// of the period put in between the samples.
/// </summary>
internal sealed class NgspiceTransient
{
    private const int StepsPerPeriod = 1000;

    private readonly Dictionary<string, double[]> vectors;
    private readonly double stopSeconds;
    private readonly double periodSeconds;

    private NgspiceTransient(Dictionary<string, double[]> vectors, double stopSeconds, double periodSeconds)
    {
        this.vectors = vectors;
        this.stopSeconds = stopSeconds;
        this.periodSeconds = periodSeconds;
    }

    /// <param name="steps">At least so many a period; the engine takes shorter ones where it has to.</param>
    internal static NgspiceTransient Run(string elements, double hertz, int periods, int steps = StepsPerPeriod)
    {
        var step = Ngspice.Number(1 / (hertz * steps));
        var stop = periods / hertz;
        var start = Ngspice.Number((periods - 2.01) / hertz);
        return new NgspiceTransient(Read(Ngspice.Raw(elements, $"tran {step} {Ngspice.Number(stop)} {start} {step}")), stop, 1 / hertz);
    }

    /// <summary>The volts between two nodes as a vector of its own.</summary>
    /// <param name="vector">Of the first node; none for the ground.</param>
    /// <returns>Its name.</returns>
    internal string Between(string? vector, string other)
    {
        var name = $"{vector}-{other}";
        var one = vector is null ? new double[vectors[other].Length] : vectors[vector];
        vectors[name] = [.. one.Zip(vectors[other], (volts, less) => volts - less)];
        return name;
    }

    internal double Average(string vector, int periodsAgo = 0) => Integral(vector, periodsAgo, v => v) / periodSeconds;

    internal double Rms(string vector, int periodsAgo = 0) => Math.Sqrt(Integral(vector, periodsAgo, v => v * v) / periodSeconds);

    /// <summary>Mean size of what is left without the average.</summary>
    internal double AlternatingMean(string vector)
    {
        var average = Average(vector);
        return Integral(vector, 0, v => Math.Abs(v - average)) / periodSeconds;
    }

    private double Integral(string vector, int periodsAgo, Func<double, double> of)
    {
        var times = vectors["time"];
        var values = vectors[vector];
        var to = stopSeconds - (periodsAgo * periodSeconds);
        var from = to - periodSeconds;
        var sum = 0.0;
        for (var k = 1; k < times.Length; k++)
        {
            var (left, right) = (Math.Max(times[k - 1], from), Math.Min(times[k], to));
            if (right > left)
            {
                sum += 0.5 * (right - left) * (of(At(times, values, k, left)) + of(At(times, values, k, right)));
            }
        }

        return sum;
    }

    private static double At(double[] times, double[] values, int k, double seconds)
    {
        var share = (seconds - times[k - 1]) / (times[k] - times[k - 1]);
        return values[k - 1] + (share * (values[k] - values[k - 1]));
    }

    /// <summary>An ASCII raw file with many points of real values; the point's number stands before its first value.</summary>
    private static Dictionary<string, double[]> Read(string[] lines)
    {
        var count = Whole(lines, "No. Variables:");
        var points = Whole(lines, "No. Points:");
        var names = Array.IndexOf(lines, "Variables:") + 1;
        var values = Array.FindIndex(lines, l => l.StartsWith("Values:", StringComparison.Ordinal)) + 1;
        var numbers = lines.Skip(values).Where(l => l.Length > 0).Select(l => double.Parse(l[(l.LastIndexOf('\t') + 1)..], CultureInfo.InvariantCulture)).ToArray();
        if (numbers.Length != count * points)
        {
            throw new InvalidOperationException($"{numbers.Length} values for {count} vectors of {points} points.");
        }

        var read = new Dictionary<string, double[]>(StringComparer.Ordinal);
        for (var k = 0; k < count; k++)
        {
            var name = lines[names + k].Split('\t', StringSplitOptions.RemoveEmptyEntries)[1].ToLowerInvariant();
            read.Add(name, [.. Enumerable.Range(0, points).Select(p => numbers[(p * count) + k])]);
        }

        return read;
    }

    private static int Whole(string[] lines, string label) =>
        int.Parse(lines.Single(l => l.StartsWith(label, StringComparison.Ordinal))[label.Length..], CultureInfo.InvariantCulture);
}
