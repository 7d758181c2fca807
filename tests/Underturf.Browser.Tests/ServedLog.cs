using Underturf.Quantities;
using Underturf.Server;

namespace Underturf.Browser;

/// <summary>One log, served as `underturf serve` does, until it is disposed of.</summary>
internal sealed class ServedLog : IAsyncDisposable
{
    private readonly CancellationTokenSource ending = new();
    private readonly Task<Problem?> serving;

    private ServedLog(string path, bool takesNotes, int port, NetworkOptions? network, TaskCompletionSource<Uri> started) =>
        serving = ServerHost.RunAsync(new ServeOptions(port, path, started.SetResult) { TakesNotes = takesNotes, Network = network }, ending.Token);

    public Uri Address { get; private set; } = null!;

    public static async Task<ServedLog> StartAsync(string path, bool takesNotes = false, int port = 0, NetworkOptions? network = null)
    {
        var started = new TaskCompletionSource<Uri>();
        var served = new ServedLog(path, takesNotes, port, network, started);
        await Task.WhenAny(started.Task, served.serving);
        Assert.True(started.Task.IsCompleted, started.Task.IsCompleted ? "" : (await served.serving)?.ToString());
        served.Address = await started.Task;
        return served;
    }

    public async ValueTask DisposeAsync()
    {
        await ending.CancelAsync();
        await serving;
        ending.Dispose();
    }
}
