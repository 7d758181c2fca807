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

    /// <summary>Of work on something that is made anew each time and whose making does not count: on the clock, and by the processor, whoever else uses it.</summary>
    public static (double Clock, double Processor) MedianMilliseconds<TMade, T>(Func<TMade> make, Func<TMade, T> work, int times)
    {
        var (clock, processor) = (new double[times], new double[times]);
        for (var time = 0; time < times; time++)
        {
            var made = make();
            var (watch, before) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
            work(made);
            clock[time] = watch.Elapsed.TotalMilliseconds;
            processor[time] = (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
        }

        return (Median(clock), Median(processor));
    }

    /// <summary>The middle one, of an even number the upper.</summary>
    public static double Median(IReadOnlyCollection<double> values) => values.Order().ElementAt(values.Count / 2);
}
