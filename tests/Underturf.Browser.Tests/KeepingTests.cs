using Microsoft.Playwright;
using Underturf.FieldLog;
using Underturf.Simulation;

namespace Underturf.Browser;

/// <summary>What the device keeps when it is hard: two pages at once, no room, an old page beside a newer one.</summary>
public sealed class KeepingTests(ServedPage served)
{
    /// <summary>Writes into a database beside the page's until not fifty bytes more are taken.</summary>
    private const string FillDevice = """
        async () => {
          const asked = indexedDB.open('filler', 1);
          asked.onupgradeneeded = () => asked.result.createObjectStore('filler', { autoIncrement: true });
          const filler = await new Promise(done => asked.onsuccess = () => done(asked.result));
          const put = size => new Promise(done => {
            const transaction = filler.transaction('filler', 'readwrite');
            const bytes = new Uint8Array(size);
            for (let i = 0; i < size; i += 65536) crypto.getRandomValues(bytes.subarray(i, Math.min(size, i + 65536)));
            transaction.objectStore('filler').add(bytes);
            transaction.oncomplete = () => done(true);
            transaction.onabort = () => done(false);
          });
          for (const size of [4000000, 256000, 16000, 1000, 50]) while (await put(size));
          filler.close();
        }
        """;

    private const int Many = 5000;

    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.Zero);

    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    [Fact]
    public async Task Two_pages_that_sweep_at_once_write_forty_notes_in_one_sound_chain()
    {
        await using var phone = await served.PhoneAsync();
        IPage[] pages = [await ServedPage.OpenAsync(phone, served.Address), await ServedPage.OpenAsync(phone, served.Address)];
        await Task.WhenAll(pages.Select((page, i) => SweepAsync(page, 20, 10 + i)));
        await Task.WhenAll(pages.Select(page => page.Locator(".backup[data-notes='40']").WaitForAsync()));
        var log = LogDocument.Read(await Hand.SaveCopyAsync(pages[0]));
        Assert.Equal(Enumerable.Range(1, 40).Select(seq => (long)seq), Hand.Own(log).Select(entry => entry.Id.Seq));
        Assert.Equal(LogDocument.Read(demo).Problems, log.Problems);
        Assert.Equal(20, Hand.Own(log).Count(entry => Hand.Reading(entry).Value.Value?.Text == "10 ohm"));
    }

    [Fact]
    public async Task A_log_of_five_thousand_entries_opens_takes_notes_and_opens_again_without_the_server()
    {
        var log = await File.ReadAllBytesAsync(Checkout.DemoLog, TestContext.Current.CancellationToken);
        var keeper = LogKeeper.After(LogDocument.Read(log));
        for (var i = LogDocument.Read(log).Entries.Count; i < Many; i++)
        {
            keeper.Note("maren", Morning.AddMinutes(i), new ToldFact { Who = "Jory", Text = $"Row {i} was planted in its year." });
        }

        var file = Path.Combine(Directory.CreateTempSubdirectory("underturf-many-").FullName, "log.jsonl");
        await File.WriteAllBytesAsync(file, keeper.Log().ToBytes(), TestContext.Current.CancellationToken);
        await using var phone = await served.PhoneAsync();
        var server = await ServedLog.StartAsync(file);
        var page = await ServedPage.OpenAsync(phone, server.Address);
        await page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");
        await SweepAsync(page, 5, 31);
        await server.DisposeAsync();
        await page.ReloadAsync();
        await page.Locator(".backup[data-notes='5']").WaitForAsync();
        var saved = LogDocument.Read(await Hand.SaveCopyAsync(page));
        Assert.Equal((Many + 5, 5), (saved.Entries.Count, Hand.Own(saved).Count));
        Assert.Equal(LogDocument.Read(log).Problems, saved.Problems);
    }

    [Fact]
    public async Task A_full_device_is_said_with_what_to_do_and_nothing_typed_is_lost()
    {
        await using var phone = await served.PhoneAsync();
        var page = await phone.NewPageAsync();
        var devTools = await phone.NewCDPSessionAsync(page);
        await devTools.SendAsync("Storage.overrideQuotaForOrigin", new Dictionary<string, object> { ["origin"] = served.Address.GetLeftPart(UriPartial.Authority), ["quotaSize"] = 40_000_000 });
        await page.GotoAsync(served.Address.ToString());
        await page.Locator(".note-begin").ClickAsync();
        await page.Locator("[data-kind=Words]").ClickAsync();
        await page.Locator("textarea").FillAsync("The lamp trench was filled with rubble.");
        await page.GetByLabel("Who says it").FillAsync("Jory");
        await page.EvaluateAsync(FillDevice);
        await page.Locator(".store").ClickAsync();
        await page.GetByText("has no room left").WaitForAsync();
        Assert.Equal("The lamp trench was filled with rubble.", await page.Locator("textarea").InputValueAsync());
        Assert.Equal("0", await page.Locator(".backup").GetAttributeAsync("data-notes"));
        Assert.True(await page.Locator(".not-stored button").IsVisibleAsync());
        await page.EvaluateAsync("() => new Promise(done => indexedDB.deleteDatabase('filler').onsuccess = () => done())");
        await Hand.StoreAsync(page);
        Assert.Single(Hand.Own(LogDocument.Read(await Hand.SaveCopyAsync(page))));
    }

    [Fact]
    public async Task A_page_reloaded_the_moment_its_note_is_on_the_device_has_the_note_and_an_empty_form()
    {
        await using var phone = await served.PhoneAsync();
        var page = await ServedPage.OpenAsync(phone, served.Address);
        await page.Locator(".note-begin").ClickAsync();
        await page.Locator("[data-kind=Words]").ClickAsync();
        await page.Locator("textarea").FillAsync("The lamp trench was filled with rubble.");
        await page.GetByLabel("Who says it").FillAsync("Jory");
        // What a page does first once a note is stored is to tell the others: from then on this one keeps nothing more.
        await page.EvaluateAsync("() => { window.killed = true; BroadcastChannel.prototype.postMessage = () => { IDBObjectStore.prototype.put = () => { throw new Error(); }; location.reload(); }; }");
        await page.Locator(".store").ClickAsync();
        await page.WaitForFunctionAsync("() => !window.killed && document.querySelector('.backup[data-notes=\"1\"]')");
        Assert.Equal(0, await page.Locator(".sheet").CountAsync());
        await page.Locator(".note-begin").ClickAsync();
        Assert.Equal(0, await page.Locator("textarea").CountAsync());
    }

    [Fact]
    public async Task An_old_page_steps_back_before_a_newer_one_and_keeps_what_is_typed()
    {
        await using var phone = await served.PhoneAsync();
        var page = await ServedPage.OpenAsync(phone, served.Address);
        await page.Locator(".note-begin").ClickAsync();
        await page.Locator("[data-kind=Words]").ClickAsync();
        await page.Locator("textarea").FillAsync("Typed on the old page.");
        await page.GetByLabel("Who says it").FillAsync("Jory");
        // What a newer page does first: it asks for a newer form of the database, and is not kept waiting.
        await page.EvaluateAsync("() => new Promise((resolve, reject) => { const request = indexedDB.open('underturf', 1000); request.onsuccess = () => (request.result.close(), resolve()); request.onerror = reject; request.onblocked = reject; })");
        await page.Locator(".store").ClickAsync();
        await page.GetByText("newer version of this page").WaitForAsync();
        Assert.Equal("Typed on the old page.", await page.Locator("textarea").InputValueAsync());
        Assert.Equal(demo, await Hand.SaveCopyAsync(page));
    }

    /// <summary>Sweeps inside the page, so that the page behind the other one is as quick as the one before it.</summary>
    private static async Task SweepAsync(IPage page, int stations, int ohms)
    {
        await page.EvaluateAsync(
            """
            async ([stations, ohms]) => {
              const shown = condition => new Promise(done => {
                const look = () => condition() && (watch.disconnect(), done());
                const watch = new MutationObserver(look);
                watch.observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
                look();
              });
              const button = (within, words) => [...document.querySelectorAll(`${within} button`)].find(each => each.textContent.trim() === words);
              const station = () => document.querySelector('.sweep-station')?.textContent;
              button('.places', 'Stations').click();
              await shown(() => document.querySelector('.sweep-begin'));
              document.querySelector('.sweep-begin').click();
              await shown(station);
              for (let i = 0; i < stations; i++) {
                const before = station();
                for (const digit of ohms) button('.keys', digit).click();
                await shown(() => document.querySelector('.pad-value').value === ohms);
                document.querySelector('.store').click();
                await shown(() => station() !== before);
              }
            }
            """,
            new object[] { stations, ohms.ToString() });
    }
}
