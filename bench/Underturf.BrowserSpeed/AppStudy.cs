using System.Globalization;
using Microsoft.Playwright;
using Underturf.Browser;

namespace Underturf.Benchmarks;

/// <summary>./prove app: what the page weighs, how soon it can be used, and how quick it is under a thumb with a long log.</summary>
internal static class AppStudy
{
    private const int LongEntries = 10_000;
    private const int Things = 2_000;
    private const int Openings = 7;

    public static async Task<int> RunAsync()
    {
        TransferSize.Tell(StaticSite.OwnPage, StaticSite.EmptyPage);
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Chromium.LaunchAsync(playwright);
        await UsableTime.TellAsync(browser, Openings);
        Console.WriteLine();
        Console.WriteLine("| log | opened again, to ready to note, s | tap to stored, median ms | 95 % below, ms | worst ms |");
        Console.WriteLine("|---|---|---|---|---|");
        await TellTapsAsync(browser, "demo", LongLog.Of(0));
        await TellTapsAsync(browser, $"{LongEntries} entries", LongLog.Of(LongEntries));
        Console.WriteLine();
        Console.WriteLine($"Natively, {LongEntries} entries: {FoldTime.Say(LongLog.Of(LongEntries))}");
        Console.WriteLine();
        await GroundFrames.TellAsync(browser, LongLog.WithThings(Things), Things);
        return 0;
    }

    private static async Task TellTapsAsync(IBrowser browser, string name, byte[] log)
    {
        var (opened, taps) = await TapTime.MeasureAsync(browser, log);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {Spread.Of(opened)} | {Spread.At(taps, 0.5):F1} | {Spread.At(taps, 0.95):F1} | {taps.Max():F1} |"));
    }
}
