using System.Diagnostics;
using Microsoft.Playwright;

namespace Underturf.Benchmarks;

/// <summary>From an address to a page that can be used, nothing kept from before, on one throttle for the page and for the empty one, by turns.</summary>
internal static class UsableTime
{
    private const int BytesASecond = 10_000_000 / 8;
    private const int LatencyMilliseconds = 50;

    public static async Task TellAsync(IBrowser browser, int openings)
    {
        await using var own = await StaticSite.StartAsync(StaticSite.OwnPage, LongLog.Of(0));
        await using var empty = await StaticSite.StartAsync(StaticSite.EmptyPage, []);
        var (mine, least) = (new List<double>(), new List<double>());
        for (var i = 0; i < openings; i++)
        {
            mine.Add(await SecondsAsync(browser, own.Address, ".note-begin"));
            least.Add(await SecondsAsync(browser, empty.Address, ".ready"));
        }

        var ratios = mine.Zip(least, (a, b) => a / b).ToList();
        Console.WriteLine($"10 Mbit/s, {LatencyMilliseconds} ms, {openings} openings each by turns: ready to note after {Spread.Of(mine)} s, the empty page after {Spread.Of(least)} s, ratio {Spread.Of(ratios)}.");
    }

    // Only what the page itself asks for can be slowed down, so nothing is kept for use offline meanwhile.
    private static async Task<double> SecondsAsync(IBrowser browser, string address, string usable)
    {
        await using var context = await browser.NewContextAsync(new BrowserNewContextOptions { ServiceWorkers = ServiceWorkerPolicy.Block, ViewportSize = new ViewportSize { Width = 390, Height = 844 } });
        var page = await context.NewPageAsync();
        var devTools = await context.NewCDPSessionAsync(page);
        await devTools.SendAsync("Network.enable");
        await devTools.SendAsync("Network.emulateNetworkConditions", new Dictionary<string, object> { ["offline"] = false, ["latency"] = LatencyMilliseconds, ["downloadThroughput"] = BytesASecond, ["uploadThroughput"] = BytesASecond });
        var begin = Stopwatch.GetTimestamp();
        await page.GotoAsync(address, new PageGotoOptions { WaitUntil = WaitUntilState.Commit });
        await page.Locator(usable).WaitForAsync(new LocatorWaitForOptions { Timeout = 120_000 });
        return Stopwatch.GetElapsedTime(begin).TotalSeconds;
    }
}
