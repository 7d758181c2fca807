using Microsoft.Playwright;
using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Browser;

/// <summary>A box card worked on and the papers made, on one phone in the browser.</summary>
public sealed class HandingOverTests(ServedPage served)
{
    [Fact]
    public async Task A_conductor_is_noted_in_three_taps_named_by_the_worker_and_the_papers_made_on_the_phone_are_those_of_the_command_line()
    {
        await using var phone = await served.PhoneAsync();
        var page = await ServedPage.OpenAsync(phone, served.Address);
        await NoteEndAsync(page);
        var log = await Hand.SaveCopyAsync(page);
        var end = Assert.IsType<EndFact>(Assert.Single(Hand.Own(LogDocument.Read(log))).Fact);
        Assert.Equal(("yellow", "b10"), (end.Colour, end.Place));
        Assert.Equal(["e10-1", "e10-2"], end.Mates);
        log = await NameEndsAsync(page);

        await page.Locator(".places").GetByText("Papers").ClickAsync();
        await page.Locator(".papers-make").ClickAsync();
        await page.Locator(".paper-hand").First.WaitForAsync();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact("phone-papers.png"), FullPage = true });
        foreach (var paper in PaperSet.Make(Notebook.Open(log, PracticeBook.Default)))
        {
            Assert.Equal(paper.Bytes.ToArray(), await SaveAsync(page, paper.FileName));
        }
    }

    private static async Task NoteEndAsync(IPage page)
    {
        await page.Locator(".places").GetByText("Boxes").ClickAsync();
        await page.Locator(".box-line[data-box=b10]").ClickAsync();
        await page.Locator(".end-begin").ClickAsync();
        await page.Locator(".colours").GetByText("yellow").ClickAsync();
        await page.Locator(".gauges").GetByText("16 AWG").ClickAsync();
        await page.Locator(".mate").First.ClickAsync();
        await page.Locator(".stored").GetByText("Stored:").WaitForAsync();
        await page.Locator(".end-close").ClickAsync();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact("phone-box.png"), FullPage = true });
    }

    /// <summary>One tap of the first round; the round after it is that of the command line.</summary>
    private static async Task<byte[]> NameEndsAsync(IPage page)
    {
        await page.Locator(".naming-begin").ClickAsync();
        await page.Locator(".fit-all").ClickAsync();
        await page.Locator(".round .pad").WaitForAsync();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact("phone-naming.png"), FullPage = true });
        var log = await Hand.SaveCopyAsync(page);
        Assert.Equal(Notebook.Open(log, PracticeBook.Default).Name("b10", new NamingCrew()).Value.Next!.On, await page.Locator(".round-on").TextContentAsync());
        await page.Locator(".naming-close").ClickAsync();
        return log;
    }

    private static async Task<byte[]> SaveAsync(IPage page, string name)
    {
        var file = await page.RunAndWaitForDownloadAsync(() => page.Locator($"[data-paper='{name}'] .paper-hand").ClickAsync());
        Assert.Equal(name, file.SuggestedFilename);
        return await File.ReadAllBytesAsync(await file.PathAsync() ?? throw new InvalidOperationException("Nothing was handed out."));
    }
}
