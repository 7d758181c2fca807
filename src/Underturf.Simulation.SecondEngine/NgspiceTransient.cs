using Underturf.Networks.Wiring.HalfWave;
using Underturf.Quantities;

namespace Underturf.Simulation.SecondEngine;

/// <summary>
/// The last two periods of a transient run of ngspice. Its steps are unequal, so means are integrals by the trapezoidal rule with the ends
/// of the period put in between the samples.
/// </summary>
internal sealed class NgspiceTransient
{
    private const int StepsPerPeriod = 1000;

    private readonly RawFile file;
    private readonly Dictionary<string, double[]> vectors = new(StringComparer.Ordinal);
    private readonly double[] times;
    private readonly double stopSeconds;
    private readonly double periodSeconds;

    private NgspiceTransient(RawFile file, double stopSeconds, double periodSeconds)
    {
        this.file = file;
        this.stopSeconds = stopSeconds;
        this.periodSeconds = periodSeconds;
        times = Values("time");
    }

    /// <param name="steps">At least so many a period; the engine takes shorter ones where it has to.</param>
    /// <param name="vectors">Those that are read back.</param>
    internal static Outcome<NgspiceTransient> Run(string elements, double hertz, int periods, int steps = StepsPerPeriod, string vectors = "all")
    {
        var step = SpiceText.Number(1 / (hertz * steps));
        var stop = periods / hertz;
        var start = SpiceText.Number((periods - 2.01) / hertz);
        var read = RawFile.Run(elements, $"tran {step} {SpiceText.Number(stop)} {start} {step}", vectors);
        return read.Succeeded ? new NgspiceTransient(read.Value, stop, 1 / hertz) : read.Problem!;
    }

    /// <summary>The volts between two nodes as a vector of its own.</summary>
    /// <param name="vector">Of the first node; none for the ground.</param>
    /// <returns>Its name.</returns>
    internal string Between(string? vector, string other)
    {
        var name = $"{vector}-{other}";
        var one = vector is null ? new double[times.Length] : Values(vector);
        vectors[name] = [.. one.Zip(Values(other), (volts, less) => volts - less)];
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

    /// <summary>What a meter of that response shows.</summary>
    internal double ShownBy(string vector, MeterResponse response)
    {
        var (average, rms) = (Average(vector), Rms(vector));
        return response switch
        {
            MeterResponse.Direct => Math.Abs(average),
            MeterResponse.MeanResponding => Math.PI / (2 * Math.Sqrt(2)) * AlternatingMean(vector),
            MeterResponse.TrueRms => Math.Sqrt((rms * rms) - (average * average)),
            _ => rms,
        };
    }

    private double Integral(string vector, int periodsAgo, Func<double, double> of)
    {
        var values = Values(vector);
        var to = stopSeconds - (periodsAgo * periodSeconds);
        var from = to - periodSeconds;
        var sum = 0.0;
        for (var k = 1; k < times.Length; k++)
        {
            var (left, right) = (Math.Max(times[k - 1], from), Math.Min(times[k], to));
            if (right > left)
            {
                sum += 0.5 * (right - left) * (of(At(values, k, left)) + of(At(values, k, right)));
            }
        }

        return sum;
    }

    private double At(double[] values, int k, double seconds)
    {
        var share = (seconds - times[k - 1]) / (times[k] - times[k - 1]);
        return values[k - 1] + (share * (values[k] - values[k - 1]));
    }

    private double[] Values(string vector)
    {
        if (!vectors.TryGetValue(vector, out var values))
        {
            values = [.. file.Vector(vector).Select(v => v.Real)];
            vectors.Add(vector, values);
        }

        return values;
    }
}
