using System.Globalization;
using Microsoft.Playwright;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Browser;

public sealed class PageTests(ServedPage served)
{
    /// <summary>How far a shown probability may be from the one computed natively: half a percentage point, plus rounding error.</summary>
    private const double ToleranceProbability = 0.005 + 1e-9;

    private static Answers Native => Notebook.Answer(File.ReadAllBytes(Checkout.DemoLog), PracticeBook.Default);

    [Fact]
    public async Task The_page_shows_the_questions_explanations_and_moves_that_the_core_computes_natively_from_the_same_bytes()
    {
        var page = await served.ReadOnlyAsync(widthPixels: 1440);
        AssertSame(Native, await ShownAnswers.ReadAsync(page));
    }

    /// <summary>Seeds are arbitrary: the properties are invented by the simulator.</summary>
    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    public async Task A_made_up_property_picked_as_a_file_gives_what_the_core_computes_natively(ulong seed)
    {
        var log = World(seed);
        var page = await PickAsync($"world-{seed}.jsonl", log);
        AssertSame(Notebook.Answer(log, PracticeBook.Default), await ShownAnswers.ReadAsync(page));
    }

    [Fact]
    public async Task The_move_that_stands_first_is_the_best_of_all()
    {
        var page = await served.ReadOnlyAsync(widthPixels: 390);
        Assert.Equal(Native.Moves[0].Action, await page.Locator(".next-move .action").TextContentAsync());
        Assert.Equal("Next", await page.Locator("h1").TextContentAsync());
    }

    [Theory]
    [InlineData(320)]
    [InlineData(390)]
    [InlineData(1440)]
    public async Task No_width_scrolls_sideways_even_with_everything_unfolded(int widthPixels)
    {
        var page = await served.ReadOnlyAsync(widthPixels);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact($"page-{widthPixels}.png"), FullPage = true });
        await page.EvaluateAsync("document.querySelectorAll('details').forEach(fold => fold.open = true)");
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= widthPixels);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact($"page-{widthPixels}-unfolded.png"), FullPage = true });
    }

    [Fact]
    public async Task What_one_presses_is_at_least_48_pixels_high()
    {
        var page = await served.ReadOnlyAsync(widthPixels: 390);
        var low = await page.EvaluateAsync<string[]>(
            "[...document.querySelectorAll('button, .button, summary, a')].filter(e => e.offsetParent && e.getBoundingClientRect().height < 48).map(e => e.outerHTML)");
        Assert.Empty(low);
    }

    [Fact]
    public async Task The_numbers_are_set_in_the_face_that_the_build_fetched()
    {
        var page = await served.ReadOnlyAsync(widthPixels: 390);
        var faces = await page.EvaluateAsync<string[]>("document.fonts.ready.then(() => [...document.fonts].filter(f => f.status === 'loaded').map(f => f.weight))");
        Assert.Contains("400", faces);
        Assert.Contains("700", faces);
    }

    [Fact]
    public async Task A_log_that_holds_nothing_is_answered_with_what_is_wrong_and_what_to_do()
    {
        var page = await PickAsync("empty.jsonl", []);
        Assert.Equal(2, await page.Locator(".problem").First.Locator("p").CountAsync());
        Assert.Equal(0, await page.Locator("article.question").CountAsync());
    }

    [Fact]
    public async Task The_demo_log_picked_as_a_file_gives_the_same_answers_as_the_one_served()
    {
        var offered = await WhollyThoughtAsync(await served.ReadOnlyAsync(widthPixels: 1440));
        var page = await PickAsync("log.jsonl", await File.ReadAllBytesAsync(Checkout.DemoLog, TestContext.Current.CancellationToken));
        Assert.Equal(offered, await WhollyThoughtAsync(page));
    }

    [Fact]
    public async Task The_page_reports_no_error_and_asks_nothing_of_other_hosts()
    {
        await served.ReadOnlyAsync(widthPixels: 1440);
        Assert.Empty(served.Errors);
        Assert.Subset(new HashSet<string> { served.Address.Authority, "" }, served.AskedHosts);
    }

    /// <summary>What stands on the page once it has also worked out where hidden things may lie, which comes after the answers.</summary>
    private static async Task<string?> WhollyThoughtAsync(IPage page)
    {
        await page.Locator(".look-first .move-action").WaitForAsync();
        await page.Locator(".look-working").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Hidden });
        // Which logs lie on the device beside this one is no answer.
        return await page.Locator("main").EvaluateAsync<string>("main => { const read = main.cloneNode(true); read.querySelector('.shelf').remove(); return read.textContent; }");
    }

    private async Task<IPage> PickAsync(string name, byte[] log)
    {
        var page = await served.PickingAsync();
        await page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/jsonl", Buffer = log });
        await ServedPage.WaitForAnswersAsync(page, name);
        return page;
    }

    private static byte[] World(ulong seed) => WorldGenerator.Make(seed, PracticeBook.Default).Log.ToBytes().ToArray();

    private static void AssertSame(Answers native, IReadOnlyList<ShownQuestion> shown)
    {
        Assert.NotEmpty(native.Questions);
        Assert.Equal(native.Questions.Select(question => (question.Id, question.Symptom)), shown.Select(question => (question.Id, question.Symptom)));
        Assert.All(native.Questions.Zip(shown), pair => AssertSame(pair.First, pair.Second));
    }

    private static void AssertSame(OpenQuestion native, ShownQuestion shown)
    {
        Assert.Equal(native.Moves.Select(move => move.Action), shown.Moves);
        // What was ruled out is folded away behind the rest.
        var told = native.Explanations.OrderBy(one => one.RuledOut).ToList();
        Assert.Equal(told.Select(one => (one.Fault, one.Summary)), shown.Explanations.Select(one => (one.Fault, one.Summary)));
        Assert.All(told.Zip(shown.Explanations), pair =>
        {
            Assert.InRange(Shown(pair.Second.Percent), pair.First.Probability - ToleranceProbability, pair.First.Probability + ToleranceProbability);
            Assert.Equal(
                pair.First.Evidence.Select(line => new ShownEvidence(line.Entry, line.Predicted, line.Observed)),
                pair.Second.Evidence);
        });
    }

    /// <summary>A shown percentage as a probability; "under 1 %" and "over 99 %" stand for the middle of what they cover.</summary>
    private static double Shown(string percent) => percent switch
    {
        "<1 %" => 0.0025,
        ">99 %" => 0.9975,
        _ => double.Parse(percent[..^2], CultureInfo.InvariantCulture) / 100,
    };
}
