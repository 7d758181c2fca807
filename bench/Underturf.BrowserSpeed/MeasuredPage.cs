using System.Diagnostics;
using Microsoft.Playwright;
using Underturf.Browser;
using Underturf.Server;

namespace Underturf.Benchmarks;

/// <summary>The published page in Chromium, with a clock beside it.</summary>
internal sealed class MeasuredPage : IAsyncDisposable
{
    private const float PatienceMilliseconds = 600_000;

    /// <summary>Notes the longest time between two turns of the page's thread: what a touch would have waited.</summary>
    private const string Listen = """
        window.deaf = 0;
        let turn = performance.now();
        const next = new MessageChannel();
        next.port1.onmessage = () => setTimeout(() => {
          const now = performance.now();
          window.deaf = Math.max(window.deaf, now - turn);
          turn = now;
          next.port2.postMessage(0);
        }, 5);
        next.port2.postMessage(0);
        """;

    private readonly CancellationTokenSource ending = new();
    private readonly string offered = Path.Combine(Directory.CreateTempSubdirectory("underturf-").FullName, "log.jsonl");
    private IPlaywright playwright = null!;
    private IBrowser browser = null!;
    private IPage page = null!;
    private Uri address = null!;
    private int number;

    public static async Task<MeasuredPage> OpenAsync(byte[] first)
    {
        var measured = new MeasuredPage();
        await File.WriteAllBytesAsync(measured.offered, first);
        var started = new TaskCompletionSource<Uri>();
        var serving = ServerHost.RunAsync(new ServeOptions(0, measured.offered, started.SetResult), measured.ending.Token);
        if (await Task.WhenAny(started.Task, serving) == serving)
        {
            throw new InvalidOperationException((await serving)?.ToString());
        }

        measured.address = await started.Task;
        measured.playwright = await Playwright.CreateAsync();
        measured.browser = await Chromium.LaunchAsync(measured.playwright);
        measured.page = await measured.NewPageAsync();
        await measured.page.EvaluateAsync(Listen);
        return measured;
    }

    /// <summary>From picking a log to its answer being shown.</summary>
    public async Task<double> SecondsAsync(byte[] log)
    {
        var begin = Stopwatch.GetTimestamp();
        await PickAsync(log);
        await ReadyAsync(page);
        return Stopwatch.GetElapsedTime(begin).TotalSeconds;
    }

    /// <summary>The longest that the page's thread was busy at one go since it was last asked.</summary>
    public Task<double> DeafMillisecondsAsync() => page.EvaluateAsync<double>("() => { const longest = window.deaf; window.deaf = 0; return longest; }");

    /// <summary>From stopping a thought to the first progress of it begun again.</summary>
    public async Task<double> StartAgainSecondsAsync(byte[] log)
    {
        await PickAsync(log);
        await page.WaitForFunctionAsync("() => document.querySelector('progress')?.value > 0.05");
        await page.Locator(".cancel").ClickAsync();
        var begin = Stopwatch.GetTimestamp();
        await page.Locator(".again").ClickAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('progress')?.value > 0");
        return Stopwatch.GetElapsedTime(begin).TotalSeconds;
    }

    /// <summary>From an address to the answer, nothing kept from before.</summary>
    public async Task<double> ColdSecondsAsync()
    {
        await page.CloseAsync();
        var begin = Stopwatch.GetTimestamp();
        page = await NewPageAsync();
        return Stopwatch.GetElapsedTime(begin).TotalSeconds;
    }

    public async ValueTask DisposeAsync()
    {
        await browser.DisposeAsync();
        playwright.Dispose();
        await ending.CancelAsync();
        ending.Dispose();
    }

    private async Task<IPage> NewPageAsync()
    {
        var opened = await browser.NewPageAsync(new BrowserNewPageOptions { ViewportSize = new ViewportSize { Width = 390, Height = 844 } });
        opened.SetDefaultTimeout(PatienceMilliseconds);
        await opened.GotoAsync(address.ToString());
        await ReadyAsync(opened);
        return opened;
    }

    private async Task PickAsync(byte[] log)
    {
        var name = $"log-{++number}.jsonl";
        await page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/jsonl", Buffer = log });
        await page.Locator(".log-name", new PageLocatorOptions { HasText = name }).WaitForAsync();
    }

    private static Task ReadyAsync(IPage shown) => shown.Locator("[data-state=ready]").WaitForAsync();
}
