using Microsoft.Playwright;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Browser;

/// <summary>Noting on one phone, with thumbs and with a keyboard; each test leaves the page at the place Now.</summary>
public sealed class NotingTests(ServedPage served)
{
    /// <summary>What is too small for a thumb among all that can be pressed and is shown.</summary>
    private const string TooSmall = """
        [...document.querySelectorAll('button, .button, summary, a, select, input, textarea')]
          .filter(e => e.checkVisibility() && !e.matches('.button input, .tick input'))
          .concat([...document.querySelectorAll('.tick')])
          .filter(e => { const box = e.getBoundingClientRect(); return box.height < 48 || box.width < 44; })
          .map(e => e.outerHTML.slice(0, 160))
        """;

    private const string Wider = "document.documentElement.scrollWidth > innerWidth";

    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    [Fact]
    public async Task A_note_is_two_taps_away_and_is_taken_back_and_brought_back_with_one()
    {
        var page = await served.NotingAsync();
        var before = await page.Locator(".backup").GetAttributeAsync("data-notes");
        await Hand.NoteOhmsAsync(page, "9", "18.4");
        Assert.Contains($"Not backed up: {int.Parse(before!) + 1} note", await page.Locator(".backup").TextContentAsync(), StringComparison.Ordinal);
        var log = await SavedAsync(page);
        var noted = Hand.Own(log)[^1];
        Assert.Equal(("station ohms", "s9", "18.4 ohm"), (Hand.Reading(noted).How, Hand.Reading(noted).Stations.Single(), Hand.Reading(noted).Value.Value?.Text));
        await page.GetByText("Undo").ClickAsync();
        await page.GetByText("Taken back:").WaitForAsync();
        Assert.DoesNotContain((await SavedAsync(page)).Standing, entry => entry.Id == noted.Id);
        await page.GetByText("Redo").ClickAsync();
        await page.GetByText("Stored:").WaitForAsync();
        Assert.Contains((await SavedAsync(page)).Standing, entry => entry.Id == noted.Id);
    }

    [Fact]
    public async Task The_copy_handed_out_is_the_log_that_was_offered_with_the_notes_behind_it_and_gives_the_answers_of_the_page()
    {
        var page = await served.NotingAsync();
        await Hand.NoteOhmsAsync(page, "9", "31.5");
        var copy = await Hand.SaveCopyAsync(page);
        Assert.Equal("0", await page.Locator(".backup").GetAttributeAsync("data-notes"));
        Assert.Equal(demo, copy[..demo.Length]);
        Assert.Equal(Hand.Own(LogDocument.Read(copy)).SelectMany(entry => (byte[])[.. entry.Line.Span, (byte)'\n']), copy[demo.Length..]);
        Assert.Equal(copy, LogMerge.Union(LogDocument.Read(copy), LogDocument.Read(demo)).ToBytes().ToArray());
        await ServedPage.WaitForAnswersAsync(page, "Served log");
        var native = Notebook.Answer(copy, PracticeBook.Default);
        Assert.Equal(native.Questions.Select(q => (q.Id, q.Symptom)), (await ShownAnswers.ReadAsync(page)).Select(q => (q.Id, q.Symptom)));
        Assert.Equal(native.Moves[0].Action, await page.Locator(".next-move .action").TextContentAsync());
    }

    [Fact]
    public async Task The_outcome_of_the_next_move_is_one_tap_away_with_its_form_filled_in()
    {
        var page = await served.NotingAsync();
        await ServedPage.WaitForAnswersAsync(page, "Served log");
        await page.Locator(".next-move .outcome").First.ClickAsync();
        await page.Locator(".note").WaitForAsync();
        Assert.True(await page.Locator(".note .chosen-names").CountAsync() > 0);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact("phone-outcome.png") });
        await page.GetByText("Put away").ClickAsync();
    }

    [Fact]
    public async Task A_note_can_be_made_stored_and_taken_back_with_a_keyboard_alone()
    {
        var page = await served.NotingAsync();
        await ReachAsync(page, "Note");
        await ReachAsync(page, "A reading");
        await ReachAsync(page, "7");
        await page.Keyboard.PressAsync("Tab");
        await TabToAsync(page, "document.activeElement.matches('.pad-value')");
        await page.Keyboard.TypeAsync("31.5");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForFunctionAsync("() => document.activeElement.matches('.note-begin')");
        await ReachAsync(page, "Undo");
        await page.GetByText("Taken back:").WaitForAsync();
        Assert.IsType<StrikeFact>(Hand.Own(await SavedAsync(page))[^1].Fact);
    }

    [Fact]
    public async Task Every_place_and_form_is_for_a_thumb_on_a_phone_and_scrolls_no_other_way_than_down()
    {
        var page = await served.NotingAsync();
        await ServedPage.WaitForAnswersAsync(page, "Served log");
        await FitsAsync(page, "now");
        await page.Locator(".note-begin").ClickAsync();
        await FitsAsync(page, "kinds");
        foreach (var kind in await page.Locator(".kind").EvaluateAllAsync<string[]>("kinds => kinds.map(kind => kind.dataset.kind)"))
        {
            await page.Locator($"[data-kind={kind}]").ClickAsync();
            await FitsAsync(page, $"note-{kind}");
            await page.GetByText("Another kind").ClickAsync();
        }

        await page.GetByText("Put away").ClickAsync();
        await page.Locator(".places").GetByText("Stations").ClickAsync();
        await FitsAsync(page, "stations");
        await page.Locator(".sweep-begin").ClickAsync();
        await FitsAsync(page, "sweep");
        await page.Locator(".sweep-end").ClickAsync();
        await page.Locator(".places").GetByText("Now").ClickAsync();
    }

    private static async Task<LogDocument> SavedAsync(IPage page) => LogDocument.Read(await Hand.SaveCopyAsync(page));

    /// <summary>Tabs to the button with these words and presses it.</summary>
    private static async Task ReachAsync(IPage page, string words)
    {
        await TabToAsync(page, $"document.activeElement.matches('button') && document.activeElement.textContent.trim() === '{words}'");
        await page.Keyboard.PressAsync("Enter");
    }

    private static async Task TabToAsync(IPage page, string condition)
    {
        for (var i = 0; i < 200 && !await page.EvaluateAsync<bool>(condition); i++)
        {
            await page.Keyboard.PressAsync("Tab");
        }

        Assert.True(await page.EvaluateAsync<bool>(condition), condition);
    }

    private static async Task FitsAsync(IPage page, string name)
    {
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact($"phone-{name}.png"), FullPage = true });
        Assert.Empty(await page.EvaluateAsync<string[]>(TooSmall));
        Assert.False(await page.EvaluateAsync<bool>(Wider), name);
    }
}
