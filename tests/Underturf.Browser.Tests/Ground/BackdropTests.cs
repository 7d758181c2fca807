using Microsoft.Playwright;
using Underturf.FieldApp;

namespace Underturf.Browser;

/// <summary>The picture beneath the plan in the browser's own store.</summary>
public sealed class BackdropTests(ServedPage served)
{
    /// <summary>What an earlier build kept: a picture under the name of the property.</summary>
    private const string KeepByName = """
        async ([name, laid]) => {
          const drawn = new OffscreenCanvas(40, 30);
          drawn.getContext('2d').fillRect(0, 0, 40, 30);
          const picture = await drawn.convertToBlob();
          const photos = await new Promise(done => {
            const asked = indexedDB.open('underturf-photos', 1);
            asked.onupgradeneeded = () => ['originals', 'small', 'saved', 'backdrops'].forEach(store => asked.result.createObjectStore(store));
            asked.onsuccess = () => done(asked.result);
          });
          await new Promise(done => {
            const transaction = photos.transaction('backdrops', 'readwrite');
            transaction.objectStore('backdrops').put({ picture, laid }, name);
            transaction.oncomplete = done;
          });
          photos.close();
        }
        """;

    private const string Keys = """
        () => new Promise(done => {
          const asked = indexedDB.open('underturf-photos', 1);
          asked.onsuccess = () => asked.result.transaction('backdrops').objectStore('backdrops').getAllKeys().onsuccess = keys => (asked.result.close(), done(keys.target.result));
        })
        """;

    [Fact]
    public async Task A_picture_that_was_kept_by_the_name_of_the_property_is_kept_by_its_id_from_then_on_and_lies_as_it_did()
    {
        await using var phone = await served.PhoneAsync();
        var page = await ServedPage.OpenAsync(phone, served.Address);
        var laid = new Backdrop(40, 30, PictureFit.Upright(40, 30, new FieldLog.Position(50, 40), 1)).Write();
        await page.EvaluateAsync(KeepByName, new object[] { "Memorial garden", laid });
        await OpenPictureAsync(page);
        Assert.Equal(["memorial-garden"], await page.EvaluateAsync<string[]>(Keys));
        await page.ReloadAsync();
        await page.Locator(".note-begin").WaitForAsync();
        await OpenPictureAsync(page);
        Assert.Equal(["memorial-garden"], await page.EvaluateAsync<string[]>(Keys));
    }

    /// <summary>Opens the panel of the picture, which has a tick for one that is there.</summary>
    private static async Task OpenPictureAsync(IPage page)
    {
        await page.Locator(".places").GetByText("Ground").ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Picture", Exact = true }).ClickAsync();
        await page.Locator(".backdrop .tick input").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
        Assert.True(await page.Locator(".backdrop .tick input").First.IsCheckedAsync());
        await page.Locator(".backdrop").GetByText("Put away").ClickAsync();
    }
}
