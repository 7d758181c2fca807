using Microsoft.Playwright;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Browser;

/// <summary>What the page does while it thinks. The properties are invented by the simulator, large enough that a thought takes its time.</summary>
public sealed class ThinkingTests(ServedPage served)
{
    private const string Working = "[data-state=working]";

    [Fact]
    public async Task While_it_thinks_it_shows_how_much_is_done_and_ends_with_the_native_answer()
    {
        var log = Large(30_002, 100);
        var page = await served.OpenAsync(served.Address, widthPixels: 390);
        await PickAsync(page, log);
        await ReachesAsync(page, 0.05);
        await ReachesAsync(page, 0.3);
        await page.Locator("[data-state=ready]").WaitForAsync();
        Assert.Equal(0, await page.Locator("progress, .cancel").CountAsync());
        Assert.Equal(Notebook.Answer(log, PracticeBook.Default).Moves.Take(1).Select(m => m.Action), await FirstMovesAsync(page));
    }

    [Fact]
    public async Task A_thought_can_be_stopped_begun_again_and_left_for_another()
    {
        var page = await served.OpenAsync(served.Address, widthPixels: 390);
        await PickAsync(page, Large(30_003, 200));
        await ReachesAsync(page, 0.02);
        var stop = page.Locator(".cancel");
        Assert.True((await stop.BoundingBoxAsync())!.Height >= 48);
        await stop.ClickAsync();
        await page.Locator("[data-state=stopped]").WaitForAsync();
        Assert.Equal(0, await page.Locator("article.question, .cancel").CountAsync());
        await page.Locator(".again").ClickAsync();
        await ReachesAsync(page, 0.02);
        await page.GetByText("Served log, newest notes").ClickAsync();
        await ServedPage.WaitForAnswersAsync(page, "Served log");
        var native = Notebook.Answer(await File.ReadAllBytesAsync(Checkout.DemoLog, TestContext.Current.CancellationToken), PracticeBook.Default);
        Assert.Equal(native.Questions.Select(q => q.Symptom), (await ShownAnswers.ReadAsync(page)).Select(q => q.Symptom));
    }

    [Fact]
    public async Task A_newer_note_begins_the_thought_again_and_what_is_tapped_meanwhile_answers()
    {
        var log = Large(30_001, 50);
        var path = Path.Combine(Directory.CreateTempSubdirectory("underturf-").FullName, "log.jsonl");
        await File.WriteAllBytesAsync(path, WithoutLast(log), TestContext.Current.CancellationToken);
        await using var server = await ServedLog.StartAsync(path);
        var page = await served.OpenAsync(server.Address, widthPixels: 390);
        await ServedPage.WaitForAnswersAsync(page, "Served log");
        await File.WriteAllBytesAsync(path, log, TestContext.Current.CancellationToken);
        await page.GetByText("Served log, newest notes").ClickAsync();
        await page.GetByText("A newer note has come in").WaitForAsync();
        await page.Locator("summary").First.ClickAsync();
        await page.Locator("details[open]").First.WaitForAsync();
        Assert.Equal(1, await page.Locator(Working).CountAsync());
        await page.Locator("[data-state=ready]").WaitForAsync();
        Assert.Equal(Notebook.Answer(log, PracticeBook.Default).Moves.Take(1).Select(m => m.Action), await FirstMovesAsync(page));
        await page.GetByText("Served log, newest notes").ClickAsync();
        await page.GetByText("No newer note").WaitForAsync();
    }

    private static byte[] Large(ulong seed, int stations) => WorldGenerator.Make(seed, PracticeBook.Default, WorldShape.Whole(stations, null)).Log.ToBytes().ToArray();

    private static byte[] WithoutLast(byte[] log) => log[..(Array.LastIndexOf(log, (byte)'\n', log.Length - 2) + 1)];

    /// <summary>A log is stored before it is shown; until its name stands there the page thinks about the one before.</summary>
    private static async Task PickAsync(IPage page, byte[] log)
    {
        await page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "large.jsonl", MimeType = "application/jsonl", Buffer = log });
        await page.Locator(".log-name", new PageLocatorOptions { HasText = "large.jsonl" }).WaitForAsync();
    }

    private static Task ReachesAsync(IPage page, double share) =>
        page.WaitForFunctionAsync("share => document.querySelector('progress')?.value >= share", share);

    private static Task<IReadOnlyList<string>> FirstMovesAsync(IPage page) => page.Locator(".next-move .action").AllTextContentsAsync();
}
