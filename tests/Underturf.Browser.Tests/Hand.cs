using Microsoft.Playwright;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>What a hand does on the page to note something.</summary>
internal static class Hand
{
    /// <summary>Notes the ohms of a station with the number pad, from any place.</summary>
    public static async Task NoteOhmsAsync(IPage page, string station, string digits)
    {
        await page.Locator(".note-begin").ClickAsync();
        await page.Locator("[data-kind=Reading]").ClickAsync();
        await page.Locator(".choice").GetByText(station, new LocatorGetByTextOptions { Exact = true }).ClickAsync();
        await PressAsync(page, digits);
        await StoreAsync(page);
    }

    public static async Task PressAsync(IPage page, string digits)
    {
        foreach (var digit in digits)
        {
            await page.Locator(".keys").GetByText(digit.ToString(), new LocatorGetByTextOptions { Exact = true }).ClickAsync();
        }
    }

    /// <summary>Presses "Store" and waits until the page says that it is.</summary>
    public static async Task StoreAsync(IPage page)
    {
        await page.Locator(".store").ClickAsync();
        await page.Locator(".sheet").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Detached });
        await page.Locator(".stored").GetByText("Stored:").WaitForAsync();
    }

    /// <summary>The file that "Save a copy" hands out.</summary>
    public static async Task<byte[]> SaveCopyAsync(IPage page)
    {
        var file = await page.RunAndWaitForDownloadAsync(() => page.Locator(".backup").ClickAsync());
        return await File.ReadAllBytesAsync(await file.PathAsync() ?? throw new InvalidOperationException("Nothing was handed out."));
    }

    /// <summary>The entries that this browser profile wrote.</summary>
    public static IReadOnlyList<Entry> Own(LogDocument log) => [.. log.Entries.Where(entry => entry.Id.Writer.StartsWith("page-", StringComparison.Ordinal))];

    public static ReadingFact Reading(Entry entry) => Assert.IsType<ReadingFact>(entry.Fact);
}
