using System.Runtime.InteropServices.JavaScript;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>The device as a browser gives it: its own database, a lock between pages, a clock, a folder for files handed out.</summary>
internal sealed class BrowserDevice : IDevice
{
    private const string Taken = "ConstraintError";

    public long WallMilliseconds => DateTimeOffset.UtcNow.ToUnixTimeMilliseconds();

    public async Task<Outcome<KeptLogs>> OpenAsync()
    {
        await DeviceCalls.ReadyAsync();
        using var said = await DeviceCalls.StateAsync();
        return Failed(said) is { } failed
            ? StoreTrouble.Of(failed)
            : KeptLogsText.Read(said.GetPropertyAsString("json")!);
    }

    public async Task<IAsyncDisposable> AloneAsync() => new Hold(await DeviceCalls.HoldAsync());

    public async Task<Outcome<KeptLines>> ReadAsync(string property, double after)
    {
        using var said = await DeviceCalls.ReadAsync(property, after);
        return Failed(said) is { } failed
            ? StoreTrouble.Of(failed)
            : new KeptLines(said.GetPropertyAsByteArray("bytes"), said.GetPropertyAsDouble("last"));
    }

    public async Task<Outcome<double?>> AddAsync(string property, ReadOnlyMemory<byte> lines, EntryId? written, string? desk)
    {
        using var said = await DeviceCalls.AddAsync(property, lines.ToArray(), written?.Writer, written?.Seq ?? 0, desk);
        return Failed(said) == Taken && written is not null ? (double?)null : Last(said);
    }

    public async Task<Outcome<double?>> ReplaceAsync(string property, ReadOnlyMemory<byte> lines)
    {
        using var said = await DeviceCalls.ReplaceAsync(property, lines.ToArray());
        return Last(said);
    }

    public async Task<Problem?> RememberAsync(KeptLog log, bool isOpen)
    {
        using var said = await DeviceCalls.RememberAsync(KeptLogsText.Write(log), isOpen);
        return Failed(said) is { } failed ? StoreTrouble.Of(failed) : null;
    }

    public async Task<Problem?> RemoveAsync(KeptLog gone)
    {
        using var said = await DeviceCalls.RemoveAsync(KeptLogsText.Write(gone));
        return Failed(said) is { } failed ? StoreTrouble.Of(failed) : null;
    }

    public async Task KeepDeskAsync(string desk)
    {
        using var said = await DeviceCalls.KeepDeskAsync(desk);
    }

    public Task HandOutAsync(string name, ReadOnlyMemory<byte> bytes)
    {
        DeviceCalls.HandOut(name, bytes.ToArray());
        return Task.CompletedTask;
    }

    public void ShowHead() => DeviceCalls.ShowHead();

    public void Listen(Func<string, Task> stored) => DeviceCalls.Listen(property => _ = stored(property));

    private static string? Failed(JSObject said) => said.GetPropertyAsString("failed");

    private static Outcome<double?> Last(JSObject said) =>
        Failed(said) is { } failed ? StoreTrouble.Of(failed) : said.GetPropertyAsDouble("last");

    private sealed class Hold(int number) : IAsyncDisposable
    {
        public ValueTask DisposeAsync()
        {
            DeviceCalls.Release(number);
            return ValueTask.CompletedTask;
        }
    }
}
