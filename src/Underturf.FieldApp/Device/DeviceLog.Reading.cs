using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>
/// How a kept log is read. Of a long one only what the forms of notes need comes first, so that noting waits for nothing else; the rest is read in slices.
/// Whatever is noted meanwhile is stored behind what was read, and joins it as every other page's notes do.
/// </summary>
public sealed partial class DeviceLog
{
    /// <summary>Some milliseconds of work in a browser: a touch between two slices is answered.</summary>
    private const int LinesAtOnce = 20;

    /// <summary>Lines of which only the first glance was taken, and the number of the last of them.</summary>
    private KeptLines? unread;

    private Task reading = Task.CompletedTask;

    /// <summary>False while only a glance was taken of the log in hand: one can note in it, and nothing can be worked out from it.</summary>
    public bool IsWhole => unread is null;

    /// <summary>Reads what is left of the log in hand.</summary>
    public Task ReadWholeAsync()
    {
        if (!IsWhole && reading.IsCompleted)
        {
            reading = ReadOnAsync();
        }

        return reading;
    }

    private async Task ReadOnAsync()
    {
        while (unread is { } mine)
        {
            var pass = new LogReading(mine.Bytes);
            while (pass.Document is null && ReferenceEquals(unread, mine))
            {
                pass.Go(LinesAtOnce);
                await Task.Yield();
            }

            await using var alone = await device.AloneAsync();
            if (ReferenceEquals(unread, mine))
            {
                (Document, last, unread) = (pass.Document!.InOrder(), mine.Last, null);
                unstored ??= await RefreshAloneAsync();
            }
        }
    }

    /// <param name="whole">Whether all of it is wanted at once.</param>
    private async Task<Problem?> TurnToAsync(string property, bool whole = false)
    {
        var lines = await device.ReadAsync(property, 0);
        if (!lines.Succeeded)
        {
            return lines.Problem;
        }

        var glance = whole ? null : LogGlance.Of(lines.Value.Bytes, WriterOf(property));
        (Document, last, unread) = (glance ?? LogDocument.Read(lines.Value.Bytes).InOrder(), lines.Value.Last, glance is null ? null : lines.Value);
        Source = kept.GetValueOrDefault(property)?.Source ?? "";
        return null;
    }

    private async Task<Problem?> RefreshAloneAsync()
    {
        if (Document.Property is not { } property)
        {
            return null;
        }

        var newer = await device.ReadAsync(property, last);
        if (!newer.Succeeded)
        {
            return newer.Problem;
        }

        if (newer.Value.Bytes.Length > 0)
        {
            (Document, last) = (LogMerge.Union(Document, LogDocument.Read(newer.Value.Bytes)), newer.Value.Last);
        }

        return null;
    }
}
