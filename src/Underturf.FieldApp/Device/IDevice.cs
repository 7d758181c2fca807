using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What a page asks of the device it is on: to keep lines of logs for good, to say the time, to hand out a file, to scroll.</summary>
public interface IDevice
{
    /// <summary>The wall clock, in Unix milliseconds.</summary>
    long WallMilliseconds { get; }

    /// <summary>Opens what is kept here, or begins it.</summary>
    Task<Outcome<KeptLogs>> OpenAsync();

    /// <summary>Waits until no other page of this browser profile is at the logs, and keeps them away until disposed of.</summary>
    Task<IAsyncDisposable> AloneAsync();

    /// <summary>The lines of a log that were stored after a number.</summary>
    Task<Outcome<KeptLines>> ReadAsync(string property, double after);

    /// <summary>Stores lines. They are there for good when it answers, or none of them is.</summary>
    /// <param name="lines">Whole lines, each ended by a line feed.</param>
    /// <param name="written">The first of the entries that this device wrote, where the lines are such, one after the other; no two pages can store the same.</param>
    /// <param name="desk">What lies on the desk once they are stored, kept with them or not at all; nothing to leave what is kept.</param>
    /// <returns>The number of the last line stored; nothing where another page had stored one of those entries first.</returns>
    Task<Outcome<double?>> AddAsync(string property, ReadOnlyMemory<byte> lines, EntryId? written, string? desk);

    /// <summary>Stores lines in place of all that are kept of a log.</summary>
    Task<Outcome<double?>> ReplaceAsync(string property, ReadOnlyMemory<byte> lines);

    /// <summary>Keeps what is known of a log besides its lines.</summary>
    /// <param name="isOpen">True where it is the one that is open from now on.</param>
    Task<Problem?> RememberAsync(KeptLog log, bool isOpen);

    /// <summary>Takes the lines of a log off the device, for good; that it was there is kept.</summary>
    /// <param name="gone">What is known of it from then on.</param>
    Task<Problem?> RemoveAsync(KeptLog gone);

    /// <summary>Keeps what lies on the desk besides the logs, in place of what was kept before.</summary>
    Task KeepDeskAsync(string desk);

    /// <summary>Hands out a file, as browsers do: into the folder for such files.</summary>
    Task HandOutAsync(string name, ReadOnlyMemory<byte> bytes);

    /// <summary>Scrolls to the head of the page.</summary>
    void ShowHead();

    /// <summary>Has a page told when another one stored something in a log.</summary>
    void Listen(Func<string, Task> stored);
}

/// <summary>What a device keeps.</summary>
/// <param name="Writer">Who writes here: this browser profile.</param>
/// <param name="Open">Property of the log that was open last.</param>
/// <param name="Promised">True where the browser has promised not to clear it when space runs low.</param>
public sealed record KeptLogs(string Writer, string? Open, bool Promised, IReadOnlyList<KeptLog> Logs)
{
    /// <summary>What lay on the desk, as it was kept.</summary>
    public string? Desk { get; init; }
}

/// <summary>A log that a device keeps.</summary>
/// <param name="Source">Where its newest notes from elsewhere came from.</param>
/// <param name="BackedUp">How many of the notes written here stand in a copy elsewhere.</param>
public sealed record KeptLog(string Property, string Source, long BackedUp)
{
    /// <summary>What people call the property.</summary>
    public string? Name { get; init; }

    /// <summary>How often it was taken off this device: after that this device writes in it under another name, because notes that were taken off may stand in a copy.</summary>
    public int Removed { get; init; }

    /// <summary>It is not on this device at present.</summary>
    public bool IsGone { get; init; }

    public string Called => Name ?? Property;
}

/// <summary>Stored lines, and the number of the last of them.</summary>
public sealed record KeptLines(ReadOnlyMemory<byte> Bytes, double Last);
