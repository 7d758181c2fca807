namespace Underturf.FieldApp;

/// <summary>How a log stands to the one before it.</summary>
internal enum LogStep
{
    Other,
    Same,
    Newer,
}

/// <summary>The log that the page works on. A log only ever grows: one that begins with the bytes of the one before is the same log with newer notes.</summary>
internal sealed class LogInHand
{
    public ReadOnlyMemory<byte> Bytes { get; private set; }

    public bool IsEmpty => Bytes.IsEmpty;

    public LogStep Take(ReadOnlyMemory<byte> log)
    {
        var grown = !Bytes.IsEmpty && log.Span.StartsWith(Bytes.Span);
        var step = !grown ? LogStep.Other : log.Length == Bytes.Length ? LogStep.Same : LogStep.Newer;
        Bytes = log;
        return step;
    }

    public void Drop() => Bytes = default;
}
