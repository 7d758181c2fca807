using System.Diagnostics;
using Microsoft.Playwright;

namespace Underturf.Benchmarks;

/// <summary>With a log on the device: from opening the page again to ready to note, and from a tap on "Store" to the page saying that it is, in a sweep.</summary>
internal static class TapTime
{
    private const int Reopenings = 5;

    /// <summary>Milliseconds of each note of a sweep, from the tap to the next station standing there, taken inside the page.</summary>
    private const string Sweep = """
        async () => {
          const shown = condition => new Promise(done => {
            const look = () => condition() && (watch.disconnect(), done());
            const watch = new MutationObserver(look);
            watch.observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
            look();
          });
          const button = (within, words) => [...document.querySelectorAll(`${within} button`)].find(each => each.textContent.trim() === words);
          const station = () => document.querySelector('.sweep-station')?.textContent;
          button('.places', 'Stations').click();
          await shown(() => document.querySelector('.sweep-begin'));
          document.querySelector('.sweep-begin').click();
          await shown(station);
          const taps = [];
          for (let i = 0; i < 30; i++) {
            const before = station();
            for (const digit of '31') button('.keys', digit).click();
            await shown(() => document.querySelector('.pad-value').value === '31');
            const tapped = performance.now();
            document.querySelector('.store').click();
            await shown(() => station() !== before);
            taps.push(performance.now() - tapped);
          }
          return taps;
        }
        """;

    public static async Task<(List<double> OpenedSeconds, List<double> TapMilliseconds)> MeasureAsync(IBrowser browser, byte[] log)
    {
        await using var site = await StaticSite.StartAsync(StaticSite.OwnPage, log);
        await using var context = await browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 390, Height = 844 } });
        context.SetDefaultTimeout(300_000);
        var page = await context.NewPageAsync();
        await page.GotoAsync(site.Address);
        await page.Locator(".note-begin").WaitForAsync();
        await page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");
        var opened = new List<double>();
        for (var i = 0; i < Reopenings; i++)
        {
            var begin = Stopwatch.GetTimestamp();
            await page.ReloadAsync(new PageReloadOptions { WaitUntil = WaitUntilState.Commit });
            await page.Locator(".note-begin").WaitForAsync();
            opened.Add(Stopwatch.GetElapsedTime(begin).TotalSeconds);
        }

        await QuietAsync(page);
        return (opened, [.. await page.EvaluateAsync<double[]>(Sweep)]);
    }

    /// <summary>Thinking would take the other processor from the page.</summary>
    public static async Task QuietAsync(IPage page)
    {
        if (await page.Locator(".cancel").IsVisibleAsync())
        {
            await page.Locator(".cancel").ClickAsync();
        }
    }
}
