using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Underturf.Browser;

/// <summary>Every place and form of the page on a phone, held against WCAG 2.2 AA by axe, and text against a contrast of 7 to 1 for bright daylight.</summary>
public sealed class AxeTests(ServedPage served)
{
    private static readonly AxeRunOptions rules = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] },
        ResultTypes = [ResultType.Violations],
        Rules = new Dictionary<string, RuleOptions> { ["color-contrast-enhanced"] = new() { Enabled = true } },
    };

    /// <summary>Folds of one class look alike: the checker need not go through hundreds of them.</summary>
    private const string UnfoldEachKindOnce = """
        const kinds = new Set();
        for (const fold of document.querySelectorAll('details')) {
          fold.open = !kinds.has(fold.className);
          kinds.add(fold.className);
        }
        """;

    private readonly List<string> found = [];

    [Fact]
    public async Task Every_place_and_form_on_a_phone_is_clean_for_axe()
    {
        await using var phone = await served.PhoneAsync();
        var page = await ServedPage.OpenAsync(phone, served.Address);
        await ServedPage.WaitForAnswersAsync(page, "Served log");
        await page.EvaluateAsync(UnfoldEachKindOnce);
        await CheckAsync(page, "Now");
        foreach (var place in (await page.Locator(".place-name").AllTextContentsAsync()).Skip(1))
        {
            await GoAsync(page, place);
            await CheckAsync(page, place);
        }

        await SeekAsync(page);
        await BoxesAsync(page);
        await GoAsync(page, "Stations");
        await page.Locator(".sweep-begin").ClickAsync();
        await CheckAsync(page, "sweep");
        await page.Locator(".sweep-end").ClickAsync();
        await FormsAsync(page);
        Assert.Equal("", string.Join('\n', found));
    }

    /// <summary>What is looked for: worked out by the worker, laid over the map as a picture.</summary>
    private async Task SeekAsync(IPage page)
    {
        await GoAsync(page, "Now");
        await page.Locator(".look-go").ClickAsync();
        await page.Locator(".ground-map[data-heat=true][data-stops]:not([data-stops='0'])").WaitForAsync();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact("phone-seeking.png") });
        await CheckAsync(page, "what is looked for");
        await page.Locator(".seek-nothing").ClickAsync();
        await CheckAsync(page, "searched, nothing found");
        await page.GetByText("Put away").ClickAsync();
    }

    private async Task BoxesAsync(IPage page)
    {
        await GoAsync(page, "Boxes");
        await page.Locator(".box-line[data-box=b10]").ClickAsync();
        await CheckAsync(page, "box card");
        await page.Locator(".end-begin").ClickAsync();
        await page.Locator(".mate-none").ClickAsync();
        await CheckAsync(page, "conductor end");
        await page.Locator(".end-close").ClickAsync();
        await page.Locator(".rebuild-begin").ClickAsync();
        await CheckAsync(page, "rebuild");
        await page.Locator("[data-step=freed] .step-turn").ClickAsync();
        await CheckAsync(page, "rebuild, one at a time");
        await page.Locator(".rebuild-leave").ClickAsync();
    }

    private async Task FormsAsync(IPage page)
    {
        await page.Locator(".note-begin").ClickAsync();
        await CheckAsync(page, "kinds of notes");
        foreach (var kind in await page.Locator(".kind").EvaluateAllAsync<string[]>("kinds => kinds.map(kind => kind.dataset.kind)"))
        {
            await page.Locator($"[data-kind={kind}]").ClickAsync();
            await CheckAsync(page, $"note {kind}");
            await page.GetByText("Another kind").ClickAsync();
        }
    }

    private static Task GoAsync(IPage page, string place) => page.Locator(".places").GetByText(place, new LocatorGetByTextOptions { Exact = true }).ClickAsync();

    private async Task CheckAsync(IPage page, string where)
    {
        var result = await page.RunAxe(rules);
        Assert.Contains(result.Passes.Concat(result.Violations), rule => rule.Id == "color-contrast-enhanced");
        found.AddRange(result.Violations.SelectMany(rule => rule.Nodes.Select(node => $"{where}: {rule.Id}: {node.Html}")));
    }
}
