using Microsoft.Playwright;

namespace Underturf.Browser;

/// <summary>The page can be put on a phone's home screen, by the browser's own check.</summary>
public sealed class InstallTests
{
    [Fact]
    public async Task The_browser_finds_nothing_that_keeps_the_page_from_being_installed()
    {
        await using var server = await ServedLog.StartAsync(Checkout.DemoLog);
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Chromium.LaunchAsync(playwright, Directory.CreateTempSubdirectory("underturf-profile-").FullName);
        browser.SetDefaultTimeout(ServedPage.PatienceMilliseconds);
        var page = await ServedPage.OpenAsync(browser, server.Address);
        await page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");
        var devTools = await browser.NewCDPSessionAsync(page);
        var errors = (await devTools.SendAsync("Page.getInstallabilityErrors"))!.Value.GetProperty("installabilityErrors");
        Assert.Equal("[]", errors.GetRawText());
        var manifest = (await devTools.SendAsync("Page.getAppManifest"))!.Value;
        Assert.Contains("\"name\": \"Underturf\"", manifest.GetProperty("data").GetString(), StringComparison.Ordinal);
        Assert.Equal("[]", manifest.GetProperty("errors").GetRawText());
    }
}
