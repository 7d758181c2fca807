using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Underturf.Browser.ServedPage))]

namespace Underturf.Browser;

/// <summary>The page as `underturf serve` serves it, and Debian's Chromium to look at it with; shared by all tests.</summary>
public sealed class ServedPage : IAsyncLifetime
{
    /// <summary>When to give up waiting, not when an answer is due: a busy machine is no fault of the page.</summary>
    internal const float PatienceMilliseconds = 300_000;

    private ServedLog? serving;
    private readonly Dictionary<int, Task<IPage>> opened = [];
    private IPlaywright? playwright;
    private IBrowser? chromium;
    private Task<IPage>? picking;
    private Task<IPage>? noting;

    public Uri Address { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        serving = await ServedLog.StartAsync(Checkout.DemoLog);
        Address = serving.Address;
        playwright = await Playwright.CreateAsync();
        chromium = await Chromium.LaunchAsync(playwright);
    }

    public async ValueTask DisposeAsync()
    {
        if (chromium is not null)
        {
            await chromium.DisposeAsync();
        }

        playwright?.Dispose();
        if (serving is not null)
        {
            await serving.DisposeAsync();
        }
    }

    /// <summary>What pages reported as errors, on their consoles or by stopping.</summary>
    public List<string> Errors { get; } = [];

    /// <summary>Every host that a page asked something of.</summary>
    public HashSet<string> AskedHosts { get; } = [];

    /// <summary>The page with the demo log answered, at a width: opened once, as starting a page costs seconds. Leave it as it is.</summary>
    public Task<IPage> ReadOnlyAsync(int widthPixels) =>
        opened.TryGetValue(widthPixels, out var page) ? page : opened[widthPixels] = OpenAsync(widthPixels);

    /// <summary>A page to pick files in, for tests of one class one after the other.</summary>
    public Task<IPage> PickingAsync() => picking ??= OpenAsync(widthPixels: 1440);

    /// <summary>A page on a phone to note in, for tests of one class one after the other.</summary>
    public Task<IPage> NotingAsync() => noting ??= OpenNotingAsync();

    private async Task<IPage> OpenNotingAsync() => await OpenAsync(await PhoneAsync(), Address);

    private async Task<IPage> OpenAsync(int widthPixels)
    {
        var page = await OpenAsync(Address, widthPixels);
        await WaitForAnswersAsync(page, "Served log");
        return page;
    }

    /// <summary>A page of one's own, in a browser context of its own, not yet answered.</summary>
    public async Task<IPage> OpenAsync(Uri address, int widthPixels)
    {
        var page = await chromium!.NewPageAsync(new BrowserNewPageOptions { ViewportSize = new ViewportSize { Width = widthPixels, Height = 900 } });
        page.SetDefaultTimeout(PatienceMilliseconds);
        if (address == Address)
        {
            page.PageError += (_, error) => Errors.Add(error);
            page.Console += (_, message) => Errors.AddRange(message.Type == "error" ? [message.Text] : Array.Empty<string>());
            page.Request += (_, request) => AskedHosts.Add(new Uri(request.Url).Authority);
        }

        await page.GotoAsync(address.ToString());
        return page;
    }

    /// <summary>A browser profile of one's own, the size of a phone, in which pages share what the device keeps.</summary>
    /// <param name="trusting">Whether it takes any certificate, as a phone does that was made to trust the server's authority.</param>
    public async Task<IBrowserContext> PhoneAsync(bool trusting = false)
    {
        var phone = await chromium!.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 390, Height = 844 }, HasTouch = true, IgnoreHTTPSErrors = trusting });
        phone.SetDefaultTimeout(PatienceMilliseconds);
        return phone;
    }

    /// <summary>A page of a profile, ready to note: the log is there, the answers may still be on their way.</summary>
    public static async Task<IPage> OpenAsync(IBrowserContext profile, Uri address)
    {
        var page = await profile.NewPageAsync();
        await page.GotoAsync(address.ToString());
        await page.Locator(".note-begin").WaitForAsync();
        return page;
    }

    /// <summary>Waits until the page shows the log of a name and has answered or refused it.</summary>
    public static async Task WaitForAnswersAsync(IPage page, string logName)
    {
        await page.Locator(".log-name", new PageLocatorOptions { HasText = logName }).WaitForAsync(new LocatorWaitForOptions { Timeout = PatienceMilliseconds });
        await page.Locator("[data-state=ready], [data-state=failed]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached, Timeout = PatienceMilliseconds });
    }
}
