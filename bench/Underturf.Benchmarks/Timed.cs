using System.Diagnostics;

namespace Underturf.Benchmarks;

/// <summary>How long work takes: the median of several times.</summary>
internal static class Timed
{
    /// <summary>Milliseconds on the clock.</summary>
    public static double MedianMilliseconds<T>(Func<T> work, int times)
    {
        var taken = new double[times];
        for (var time = 0; time < times; time++)
        {
            var watch = Stopwatch.StartNew();
            work();
            taken[time] = watch.Elapsed.TotalMilliseconds;
        }

        return Median(taken);
    }

    /// <summary>The middle one, of an even number the upper.</summary>
    public static double Median(IReadOnlyCollection<double> values) => values.Order().ElementAt(values.Count / 2);
}
