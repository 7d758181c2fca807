using System.Diagnostics;
using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Benchmarks;

/// <summary>What a log costs natively, once the code is warm: the page's share of it is some ten times that.</summary>
internal static class FoldTime
{
    private const int Runs = 9;

    public static string Say(byte[] bytes)
    {
        var log = LogDocument.Read(bytes);
        var history = PropertyHistory.Fold(log.Standing);
        var last = log.Entries[^1];
        var note = Pen.Seal(log.Property!, last.Id.Writer, last.Header, HybridTime.Next(last.Header.Noted, last.Header.Noted.UnixMilliseconds + 1000), new BoxFact { Id = "b" }).Value;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"read {Median(() => LogDocument.Read(bytes)):F1} ms, folded {Median(() => PropertyHistory.Fold(log.Standing)):F1} ms, view made {Median(() => PropertyHistory.Fold(log.Standing).Now):F1} ms with the fold; a note more: log {Median(() => log.With(note)):F1} ms, history {Median(() => history.With(note)!):F2} ms.");
    }

    private static double Median(Func<object> work) => Spread.At([.. Enumerable.Range(0, Runs).Select(_ =>
    {
        var begin = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(begin).TotalMilliseconds;
    })], 0.5);
}
