using System.Diagnostics;
using Underturf.Property.Practice;

namespace Underturf.Tests.Property;

/// <summary>Finds numbers of the practice book that change nothing: they have no place in it.</summary>
/// <param name="cases">One that says something else is enough.</param>
/// <param name="said">What a case says with a book, cheapest first.</param>
/// <param name="usual">The book with nothing changed.</param>
internal sealed class IdleNumbers<T>(IReadOnlyList<T> cases, Func<T, PracticeBook, IEnumerable<string>> said, PracticeBook usual)
{
    private static readonly double[] Factors = [1.37, 0.61];

    private readonly string[][] before = [.. cases.Select(c => said(c, usual).ToArray())];
    private readonly double[] seconds = new double[cases.Count];
    private readonly int[] saw = new int[cases.Count];

    /// <param name="paths">The numbers in question.</param>
    /// <param name="changed">The book in which only this number is so many times as large; nothing where that is no valid book.</param>
    public IReadOnlyList<string> Among(IEnumerable<string> paths, Func<string, double, PracticeBook?> changed) =>
        [.. paths.AsParallel().Where(path => !Factors.Any(factor => changed(path, factor) is { } book && Order().Any(which => SaysElse(which, book, path)))).Order(StringComparer.Ordinal)];

    /// <summary>First those that have seen most for the time they took: the order changes how long it takes, not what is found.</summary>
    private int[] Order()
    {
        lock (saw)
        {
            return [.. Enumerable.Range(0, cases.Count).OrderByDescending(which => (saw[which] + 1) / (seconds[which] + 0.05))];
        }
    }

    private bool SaysElse(int which, PracticeBook book, string path)
    {
        var begun = Stopwatch.GetTimestamp();
        try
        {
            var differs = !said(cases[which], book).SequenceEqual(before[which]);
            lock (saw)
            {
                seconds[which] += Stopwatch.GetElapsedTime(begun).TotalSeconds;
                saw[which] += differs ? 1 : 0;
            }

            return differs;
        }
        catch (Exception fault)
        {
            throw new InvalidOperationException($"{path} in case {which}: a book that is accepted must give an answer", fault);
        }
    }
}
