using System.Diagnostics;
using Microsoft.Playwright;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>A phone ends the browser whenever it likes.</summary>
public sealed class KilledBrowserTests
{
    [Fact]
    public async Task What_was_said_to_be_stored_outlives_the_server_a_reload_and_the_browser_s_end()
    {
        var server = await ServedLog.StartAsync(Checkout.DemoLog);
        var profile = Directory.CreateTempSubdirectory("underturf-profile-").FullName;
        using var playwright = await Playwright.CreateAsync();
        var first = await OpenAsync(playwright, profile);
        var page = await ServedPage.OpenAsync(first, server.Address);
        await page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");
        await Hand.NoteOhmsAsync(page, "9", "18.4");
        await server.DisposeAsync();
        await page.ReloadAsync();
        await page.Locator(".backup[data-notes='1']").WaitForAsync();
        await Hand.NoteOhmsAsync(page, "10", "31");
        await page.Locator(".note-begin").ClickAsync();
        await page.Locator("[data-kind=Reading]").ClickAsync();
        await Hand.PressAsync(page, "27");
        // Until the device has kept what was tapped last: nothing is promised of a tap in the moment of the kill.
        await page.EvaluateAsync("() => new Promise(kept => { const asked = indexedDB.open('underturf'); asked.onsuccess = () => { const read = () => { const desk = asked.result.transaction('device').objectStore('device').get('desk'); desk.onsuccess = () => desk.result.includes('\"27\"') ? (asked.result.close(), kept()) : read(); }; read(); }; })");
        Kill(profile);
        await using var second = await OpenAsync(playwright, profile);
        var again = await ServedPage.OpenAsync(second, server.Address);
        await again.Locator(".backup[data-notes='2']").WaitForAsync();
        Assert.Equal("27", await again.Locator(".pad-value").InputValueAsync());
        await again.GetByText("Put away").ClickAsync();
        var own = Hand.Own(LogDocument.Read(await Hand.SaveCopyAsync(again)));
        Assert.Equal(["18.4 ohm", "31 ohm"], own.Select(entry => Hand.Reading(entry).Value.Value?.Text));
    }

    private static async Task<IBrowserContext> OpenAsync(IPlaywright playwright, string profile)
    {
        var browser = await Chromium.LaunchAsync(playwright, profile);
        browser.SetDefaultTimeout(ServedPage.PatienceMilliseconds);
        return browser;
    }

    /// <summary>The browser's own process: the one with this profile that is no child of it.</summary>
    private static void Kill(string profile)
    {
        foreach (var folder in Directory.GetDirectories("/proc").Where(folder => int.TryParse(Path.GetFileName(folder), out _)))
        {
            if (Arguments(folder) is { } line && line.Contains(profile, StringComparison.Ordinal) && line.Contains("chrom", StringComparison.Ordinal) && !line.Contains("--type=", StringComparison.Ordinal))
            {
                using var browser = Process.GetProcessById(int.Parse(Path.GetFileName(folder)));
                browser.Kill();
                browser.WaitForExit();
            }
        }
    }

    private static string? Arguments(string folder)
    {
        try
        {
            return File.ReadAllText(Path.Combine(folder, "cmdline"));
        }
        catch (IOException)
        {
            return null;
        }
    }
}
