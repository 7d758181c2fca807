using Microsoft.Playwright;
using Underturf.Quantities;
using Underturf.Server;

[assembly: AssemblyFixture(typeof(Underturf.Browser.ServedPage))]

namespace Underturf.Browser;

/// <summary>The page as `underturf serve` serves it, and Debian's Chromium to look at it with; shared by all tests.</summary>
public sealed class ServedPage : IAsyncLifetime
{
    private readonly CancellationTokenSource ending = new();
    private Task<Problem?>? serving;
    private IPlaywright? playwright;

    public IBrowser Chromium { get; private set; } = null!;

    public Uri Address { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        var started = new TaskCompletionSource<Uri>();
        serving = ServerHost.RunAsync(new ServeOptions(0, Checkout.DemoLog, started.SetResult), ending.Token);
        await Task.WhenAny(started.Task, serving);
        Assert.True(started.Task.IsCompleted, started.Task.IsCompleted ? "" : (await serving)?.ToString());
        Address = await started.Task;
        playwright = await Playwright.CreateAsync();
        Chromium = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = FindChromium(),
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (Chromium is not null)
        {
            await Chromium.DisposeAsync();
        }

        playwright?.Dispose();
        await ending.CancelAsync();
        await (serving ?? Task.FromResult<Problem?>(null));
        ending.Dispose();
    }

    /// <summary>Opens the page at a width and waits until it has answered.</summary>
    public async Task<IPage> OpenAsync(int widthPixels)
    {
        var page = await Chromium.NewPageAsync(new BrowserNewPageOptions { ViewportSize = new ViewportSize { Width = widthPixels, Height = 900 } });
        await page.GotoAsync(Address.ToString());
        await page.Locator("[data-state=ready], [data-state=failed]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached, Timeout = 120_000 });
        return page;
    }

    private static string FindChromium() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "chromium")).FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException("Chromium is not on PATH. Install the Debian package: apt-get install chromium");
}
