using Microsoft.Playwright;
using Underturf.FieldLog;
using Position = Underturf.FieldLog.Position;

namespace Underturf.Browser;

/// <summary>Ground on the served page: one phone from the first look to a reload without the server, one desk for the look of it.</summary>
public sealed class GroundTests(ServedPage served)
{
    /// <summary>What is too small for a thumb on Ground.</summary>
    private const string TooSmall = """
        [...document.querySelectorAll('.ground :is(button, summary, select, input, .tick)')]
          .filter(e => e.checkVisibility() && !e.matches('.tick input'))
          .filter(e => { const box = e.getBoundingClientRect(); return box.height < 48 || box.width < 44; })
          .map(e => e.outerHTML.slice(0, 160))
        """;

    private const string Wider = "document.documentElement.scrollWidth > innerWidth";

    [Fact]
    public async Task A_thing_is_seen_placed_moved_taken_back_and_still_there_after_a_reload_with_the_server_off()
    {
        var server = await ServedLog.StartAsync(Checkout.DemoLog);
        await using var phone = await served.PhoneAsync();
        var page = await ServedPage.OpenAsync(phone, server.Address);
        await page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");
        await ToGroundAsync(page);
        await FitsAsync(page, "ground");
        await TapAsync(page, eastMetres: 318, northMetres: 152);
        await page.Locator(".ground-card h2", new PageLocatorOptions { HasText = "lookout valve" }).WaitForAsync();
        await FitsAsync(page, "ground-card");
        await page.Locator(".ground-card").GetByText("Close").ClickAsync();

        await page.GetByText("Place a thing").ClickAsync();
        await FitsAsync(page, "ground-kinds");
        await page.Locator(".placing .choice").GetByText("box", new LocatorGetByTextOptions { Exact = true }).ClickAsync();
        await TapAsync(page, eastMetres: 150, northMetres: 60);
        await FitsAsync(page, "ground-placing");
        await StoreAsync(page, "box 16 placed");
        await page.Locator(".ground-move").ClickAsync();
        await TapAsync(page, eastMetres: 180, northMetres: 80);
        await StoreAsync(page, "box 16 placed");
        await page.GetByText("Undo").ClickAsync();
        await page.GetByText("Taken back:").WaitForAsync();

        await server.DisposeAsync();
        await page.ReloadAsync();
        await ToGroundAsync(page);
        await page.Locator(".ground-line[data-thing^=page-][aria-pressed=true]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
        await page.Locator(".ground-card h2", new PageLocatorOptions { HasText = "box 16" }).WaitForAsync();
        var own = Hand.Own(LogDocument.Read(await Hand.SaveCopyAsync(page)));
        Assert.Equal([typeof(BoxFact), typeof(BoxFact), typeof(StrikeFact)], own.Select(entry => entry.Fact!.GetType()));
        // A thumb is no finer than a pixel of the map.
        Assert.InRange(((BoxFact)own[0].Fact!).Position!.Value.DistanceMetresTo(new Position(150, 60)), 0, 2);
        await ReachAllAsync(page);
    }

    [Fact]
    public async Task On_a_wide_screen_the_map_stands_beside_everything_on_it()
    {
        var page = await served.OpenAsync(served.Address, widthPixels: 1440);
        await page.Locator(".note-begin").WaitForAsync();
        await ToGroundAsync(page);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact("desk-ground.png") });
        var (map, list) = (await page.Locator(".ground-map").BoundingBoxAsync(), await page.Locator(".ground-list").BoundingBoxAsync());
        Assert.True(map!.X + map.Width < list!.X && Math.Abs(map.Y - list.Y) < 48);
        Assert.Equal("41", await page.Locator(".ground-map").GetAttributeAsync("data-things"));
        Assert.False(await page.EvaluateAsync<bool>(Wider));
        await page.CloseAsync();
    }

    private static async Task ToGroundAsync(IPage page)
    {
        await page.Locator(".places").GetByText("Ground").ClickAsync();
        await page.Locator(".ground-map[data-things][data-resolution]").WaitForAsync();
    }

    /// <summary>Taps the map at a place of the property, by what the map says of where it stands.</summary>
    private static async Task TapAsync(IPage page, double eastMetres, double northMetres)
    {
        var at = await page.Locator(".ground-map").EvaluateAsync<float[]>(
            """
            async (map, [east, north]) => {
              // The map has followed the size of its frame once it has been drawn twice.
              for (let frames = 0; frames < 2; frames++) await new Promise(requestAnimationFrame);
              const [middleEast, middleNorth] = map.dataset.middle.split(' ').map(Number);
              const resolution = Number(map.dataset.resolution);
              return [map.clientWidth / 2 + (east - middleEast) / resolution, map.clientHeight / 2 - (north - middleNorth) / resolution];
            }
            """,
            new[] { eastMetres, northMetres });
        await page.Locator(".ground-map").TapAsync(new LocatorTapOptions { Position = new Microsoft.Playwright.Position { X = at[0], Y = at[1] } });
    }

    private static async Task StoreAsync(IPage page, string said)
    {
        await page.Locator(".placing .store").ClickAsync();
        await page.Locator(".placing").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Detached });
        await page.Locator(".stored", new PageLocatorOptions { HasText = $"Stored: {said}" }).WaitForAsync();
    }

    /// <summary>From the map a keyboard reaches every thing that it shows.</summary>
    private static async Task ReachAllAsync(IPage page)
    {
        await page.EvaluateAsync("() => { document.querySelectorAll('.ground-group').forEach(fold => fold.open = true); document.querySelector('.ground-map').focus(); }");
        var reached = new HashSet<string>();
        var things = int.Parse((await page.Locator(".ground-map").GetAttributeAsync("data-things"))!);
        for (var i = 0; i < 4 * things && reached.Count < things; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            reached.UnionWith(await page.EvaluateAsync<string?>("document.activeElement.dataset.thing ?? null") is { } thing ? [thing] : []);
        }

        Assert.Equal(things, reached.Count);
    }

    private static async Task FitsAsync(IPage page, string name)
    {
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact($"phone-{name}.png") });
        Assert.Empty(await page.EvaluateAsync<string[]>(TooSmall));
        Assert.False(await page.EvaluateAsync<bool>(Wider), name);
    }
}
