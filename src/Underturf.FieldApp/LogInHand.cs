namespace Underturf.FieldApp;

/// <summary>How a log stands to the one before it.</summary>
internal enum LogStep
{
    /// <summary>There was none before it.</summary>
    First,
    Other,
    Same,
    Newer,
}

/// <summary>The log that was thought about last. Logs of one property are united, so another one of the same property has newer notes.</summary>
internal sealed class LogInHand
{
    private string? property;

    public ReadOnlyMemory<byte> Bytes { get; private set; }

    public bool IsEmpty => Bytes.IsEmpty;

    /// <summary>None is in hand any more.</summary>
    public void Clear() => (property, Bytes) = (null, default);

    public LogStep Take(string? of, ReadOnlyMemory<byte> log)
    {
        var step = Bytes.IsEmpty ? LogStep.First
            : of != property ? LogStep.Other
            : log.Span.SequenceEqual(Bytes.Span) ? LogStep.Same
            : of is null ? LogStep.Other : LogStep.Newer;
        (property, Bytes) = (of, log);
        return step;
    }
}
