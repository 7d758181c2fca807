namespace Underturf.Reasoning;

/// <summary>
/// Tells somebody who waits how much of an answer is done, from 0 to 1 and never backwards, and asks before each step whether it is still wanted.
/// No clock: the shares are those of properties of 20 to 200 stations, near enough to see that it goes on.
/// </summary>
internal sealed class Pace
{
    /// <summary>A smaller advance is not worth telling.</summary>
    private const double LeastTold = 0.005;

    private Waiting waiting = new();
    private double done;
    private double told;
    private double end;
    private double perStep;
    private double stepsEnd;

    /// <summary>A new answer begins.</summary>
    public void Begin(Waiting whoever)
    {
        (waiting, done, told, end, perStep, stepsEnd) = (whoever, 0, 0, 0, 0, 0);
        waiting.Cancellation.ThrowIfCancellationRequested();
        waiting.Progress?.Report(0);
    }

    /// <summary>What came before is done, and what follows ends at this share of the whole.</summary>
    public void Until(double share)
    {
        Advance(end);
        (end, perStep, stepsEnd) = (Math.Max(end, share), 0, end);
    }

    /// <summary>The next steps together are a part of what is left until the end that was named.</summary>
    public void Take(double part, int steps)
    {
        Advance(stepsEnd);
        stepsEnd = done + (part * (end - done));
        perStep = (stepsEnd - done) / Math.Max(1, steps);
    }

    /// <summary>One step is done: the place at which an answer that nobody wants any more is given up.</summary>
    /// <exception cref="OperationCanceledException">It is not wanted any more.</exception>
    public void Step()
    {
        waiting.Cancellation.ThrowIfCancellationRequested();
        Advance(Math.Min(stepsEnd, done + perStep));
    }

    /// <summary>All is done.</summary>
    public void End() => Advance(1);

    /// <summary>Nobody waits any more.</summary>
    public void Rest() => waiting = new Waiting();

    /// <summary>All of a list, a step after each: together all that is left until the end that was named.</summary>
    public IEnumerable<T> Over<T>(IReadOnlyList<T> items)
    {
        Take(1, items.Count);
        foreach (var item in items)
        {
            yield return item;
            Step();
        }
    }

    private void Advance(double share)
    {
        done = Math.Max(done, share);
        if (waiting.Progress is { } progress && (done >= told + LeastTold || (done >= 1 && told < 1)))
        {
            told = Math.Min(1, done);
            progress.Report(told);
        }
    }
}
