using System.Globalization;
using Microsoft.Playwright;

namespace Underturf.Benchmarks;

/// <summary>Script for each frame while the plan is dragged to and fro, by the browser's own count of what scripts took.</summary>
internal static class GroundFrames
{
    private const int Steps = 120;

    private const string CountFrames = "() => { window.frames_ = 0; const next = () => { window.frames_++; requestAnimationFrame(next); }; requestAnimationFrame(next); }";

    public static async Task TellAsync(IBrowser browser, byte[] log, int things)
    {
        await using var site = await StaticSite.StartAsync(StaticSite.OwnPage, log);
        await using var context = await browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 390, Height = 844 } });
        context.SetDefaultTimeout(300_000);
        var page = await context.NewPageAsync();
        await page.GotoAsync(site.Address);
        await page.Locator(".note-begin").WaitForAsync();
        await TapTime.QuietAsync(page);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Ground", Exact = true }).ClickAsync();
        var map = page.Locator(".ol-viewport").First;
        await map.WaitForAsync();
        await page.EvaluateAsync(CountFrames);
        var box = (await map.BoundingBoxAsync())!;
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await DragAsync(page, x, y);
        var devTools = await context.NewCDPSessionAsync(page);
        await devTools.SendAsync("Performance.enable");
        var (script, frames) = (await ScriptSecondsAsync(devTools), await page.EvaluateAsync<int>("() => window.frames_"));
        await DragAsync(page, x, y);
        var spent = 1000 * (await ScriptSecondsAsync(devTools) - script) / (await page.EvaluateAsync<int>("() => window.frames_") - frames);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Ground with {things} things more than the demo has, dragged in {Steps} steps: {spent:F2} ms of script a frame."));
    }

    private static async Task DragAsync(IPage page, float x, float y)
    {
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        for (var i = 0; i < Steps; i++)
        {
            var away = (float)(60 * Math.Sin(2 * Math.PI * i / 40));
            await page.Mouse.MoveAsync(x + away, y + (away / 2));
        }

        await page.Mouse.UpAsync();
    }

    private static async Task<double> ScriptSecondsAsync(ICDPSession devTools)
    {
        var said = (await devTools.SendAsync("Performance.getMetrics"))!.Value;
        return said.GetProperty("metrics").EnumerateArray().Single(each => each.GetProperty("name").GetString() == "ScriptDuration").GetProperty("value").GetDouble();
    }
}
