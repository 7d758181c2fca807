using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>A device that keeps logs in memory; several pages can be at it. It can be told to refuse, or to have no lock between pages.</summary>
internal sealed class MemoryDevice : IDevice
{
    /// <summary>A morning of the demo, so that no test depends on the clock of the machine.</summary>
    private static readonly DateTimeOffset morning = new(2031, 4, 3, 14, 0, 0, TimeSpan.Zero);

    private readonly Dictionary<string, List<(double Number, byte[] Line)>> lines = [];
    private readonly HashSet<(string Property, EntryId Entry)> written = [];
    private readonly Dictionary<string, KeptLog> logs = [];
    private readonly List<Func<string, Task>> listeners = [];
    private long ticks = morning.ToUnixTimeMilliseconds();
    private string? open;
    private double number;
    private Task lastTurn = Task.CompletedTask;

    /// <summary>Why nothing can be stored at present.</summary>
    public Problem? Full { get; set; }

    public bool HasLock { get; set; } = true;

    /// <summary>Who writes here.</summary>
    public string Writer { get; init; } = "page-a";

    /// <summary>What was kept of the desk.</summary>
    public string? Desk { get; set; }

    /// <summary>True once its page was killed: what was on the way to be kept besides notes is lost.</summary>
    public bool IsKilled { get; set; }

    /// <summary>How often the head of the page was shown.</summary>
    public int Heads { get; private set; }

    /// <summary>Files handed out, newest last.</summary>
    public List<(string Name, byte[] Bytes)> HandedOut { get; } = [];

    /// <summary>How often a page can have the logs to itself before another page has them until <see cref="OtherPage"/> ends; nothing where none does.</summary>
    public int? Turns { get; set; }

    public TaskCompletionSource OtherPage { get; } = new();

    /// <summary>Done once, between the reading and the storing of a note.</summary>
    public Func<Task>? Meanwhile { get; set; }

    public long WallMilliseconds => ticks += 1000;

    public Task<Outcome<KeptLogs>> OpenAsync() => Task.FromResult<Outcome<KeptLogs>>(new KeptLogs(Writer, open, false, [.. logs.Values]) { Desk = Desk });

    public async Task<IAsyncDisposable> AloneAsync()
    {
        var turn = new Turn();
        if (Turns is { } left)
        {
            Turns = Math.Max(0, left - 1);
            await (left == 0 ? OtherPage.Task : Task.CompletedTask);
        }

        if (HasLock)
        {
            var before = lastTurn;
            lastTurn = turn.Ended;
            await before;
        }

        return turn;
    }

    public Task<Outcome<KeptLines>> ReadAsync(string property, double after)
    {
        var newer = lines.GetValueOrDefault(property, []).Where(line => line.Number > after).ToList();
        return Task.FromResult<Outcome<KeptLines>>(new KeptLines(newer.SelectMany(line => (byte[])[.. line.Line, (byte)'\n']).ToArray(), newer.Count > 0 ? newer[^1].Number : after));
    }

    public async Task<Outcome<double?>> AddAsync(string property, ReadOnlyMemory<byte> lines, EntryId? written, string? desk)
    {
        if (Meanwhile is { } meanwhile)
        {
            Meanwhile = null;
            await meanwhile();
        }

        if (Full is { } full)
        {
            return full;
        }

        var entries = written is null ? [] : LogDocument.Read(lines).Entries.Select(entry => (property, entry.Id)).ToList();
        if (this.written.Overlaps(entries))
        {
            return (double?)null;
        }

        this.written.UnionWith(entries);
        Desk = desk ?? Desk;
        return Put(property, lines);
    }

    public Task<Outcome<double?>> ReplaceAsync(string property, ReadOnlyMemory<byte> lines)
    {
        this.lines.Remove(property);
        return Task.FromResult<Outcome<double?>>(Put(property, lines));
    }

    public Task<Problem?> RememberAsync(KeptLog log, bool isOpen)
    {
        (logs[log.Property], open) = (log, isOpen ? log.Property : open);
        return Task.FromResult<Problem?>(null);
    }

    public Task<Problem?> RemoveAsync(KeptLog gone)
    {
        logs[gone.Property] = gone;
        lines.Remove(gone.Property);
        written.RemoveWhere(w => w.Property == gone.Property);
        return Task.FromResult<Problem?>(null);
    }

    public Task KeepDeskAsync(string desk)
    {
        Desk = IsKilled ? Desk : desk;
        return Task.CompletedTask;
    }

    public Task HandOutAsync(string name, ReadOnlyMemory<byte> bytes)
    {
        HandedOut.Add((name, bytes.ToArray()));
        return Task.CompletedTask;
    }

    public void ShowHead() => Heads++;

    public void Listen(Func<string, Task> stored) => listeners.Add(stored);

    private double? Put(string property, ReadOnlyMemory<byte> added)
    {
        var kept = lines.TryGetValue(property, out var before) ? before : lines[property] = [];
        foreach (var line in LogDocument.Read(added).Lines)
        {
            kept.Add((++number, line.Bytes.ToArray()));
        }

        return number;
    }

    private sealed class Turn : IAsyncDisposable
    {
        private readonly TaskCompletionSource end = new();

        public Task Ended => end.Task;

        public ValueTask DisposeAsync()
        {
            end.SetResult();
            return ValueTask.CompletedTask;
        }
    }
}
