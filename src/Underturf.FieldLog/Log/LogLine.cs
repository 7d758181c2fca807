namespace Underturf.FieldLog;

/// <summary>One physical line of a log, good or bad; nothing of it is ever dropped.</summary>
/// <param name="Number">Counted from 1.</param>
/// <param name="Bytes">The exact bytes up to the line feed, with any carriage return and byte-order mark.</param>
/// <param name="Entry">The entry, where the line is whole and unchanged.</param>
public sealed record LogLine(int Number, ReadOnlyMemory<byte> Bytes, Entry? Entry)
{
    /// <summary>True where the line holds nothing but blanks.</summary>
    public bool IsBlank => LogLines.IsBlank(Bytes.Span);

    /// <summary>How problems name the line.</summary>
    internal string Place => LogLines.Place(Number);
}
