using System.IO.Compression;
using System.Security.Cryptography;
using Microsoft.Playwright;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>A photo on a phone, from the camera to the pack that is opened on another phone.</summary>
public sealed class PhotoTests(ServedPage served)
{
    /// <summary>A real photo, invented by the browser: 60 by 40 pixels, half of them red.</summary>
    private const string Draw = """
        async () => {
          const canvas = Object.assign(document.createElement('canvas'), { width: 60, height: 40 });
          const pen = canvas.getContext('2d');
          pen.fillStyle = 'red';
          pen.fillRect(0, 0, 30, 40);
          const blob = await new Promise(made => canvas.toBlob(made, 'image/jpeg'));
          return btoa(String.fromCharCode(...new Uint8Array(await blob.arrayBuffer())));
        }
        """;

    [Fact]
    public async Task A_photo_is_kept_byte_for_byte_shown_small_and_whole_and_goes_along_to_another_phone()
    {
        await using var phone = await served.PhoneAsync();
        var page = await phone.NewPageAsync();
        await page.GotoAsync(served.Address.ToString());
        var jpeg = Convert.FromBase64String(await page.EvaluateAsync<string>(Draw));
        var hash = Convert.ToHexStringLower(SHA256.HashData(jpeg));
        await page.Locator(".places").GetByText("Boxes").ClickAsync();
        await page.Locator(".box-line[data-box=b7]").ClickAsync();
        await page.Locator("#box-camera").SetInputFilesAsync(new FilePayload { Name = "IMG.jpg", MimeType = "image/jpeg", Buffer = jpeg });
        var small = page.Locator($".photo[data-photo='{hash}'] img");
        await small.WaitForAsync();
        await page.ReloadAsync();
        await small.WaitForAsync();
        Assert.Equal(60, await small.EvaluateAsync<int>("image => image.decode().then(() => image.naturalWidth)"));
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Checkout.Artifact("phone-photo.png"), FullPage = true });
        await page.Locator(".photo-small").ClickAsync();
        await page.Locator("dialog.photo-whole img").WaitForAsync();
        await page.Keyboard.PressAsync("Escape");
        await page.Locator("dialog").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Detached });

        var saved = await page.RunAndWaitForDownloadAsync(() => page.Locator(".backup[data-photos='1']").ClickAsync());
        var pack = await File.ReadAllBytesAsync(await saved.PathAsync(), TestContext.Current.CancellationToken);
        await page.Locator(".backup[data-photos='0']").WaitForAsync();
        Assert.Equal(jpeg, Unpacked(pack, $"photos/{hash}.jpg"));
        var log = LogDocument.Read(Unpacked(pack, saved.SuggestedFilename.Replace(".zip", ".jsonl", StringComparison.Ordinal)));
        var photo = Assert.IsType<PhotoFact>(Hand.Own(log).Single().Fact);
        Assert.Equal((hash, "image/jpeg", 60, 40, "b7"), (photo.Hash, photo.Media, photo.Width, photo.Height, photo.Place));

        await using var other = await served.PhoneAsync();
        var second = await other.NewPageAsync();
        await second.GotoAsync(served.Address.ToString());
        await second.Locator("#log-file").SetInputFilesAsync(new FilePayload { Name = "garden.zip", MimeType = "application/zip", Buffer = Deflated(pack) });
        await second.Locator(".copy-all").WaitForAsync();
        await second.Locator(".places").GetByText("Boxes").ClickAsync();
        await second.Locator(".box-line[data-box=b7]").ClickAsync();
        await second.Locator($".photo[data-photo='{hash}'] img").WaitForAsync();
    }

    private static byte[] Unpacked(byte[] pack, string name)
    {
        using var zip = new ZipArchive(new MemoryStream(pack));
        using var bytes = new MemoryStream();
        zip.GetEntry(name)!.Open().CopyTo(bytes);
        return bytes.ToArray();
    }

    /// <summary>The same files as another program would pack them.</summary>
    private static byte[] Deflated(byte[] pack)
    {
        using var bytes = new MemoryStream();
        using (var from = new ZipArchive(new MemoryStream(pack)))
        using (var to = new ZipArchive(bytes, ZipArchiveMode.Create))
        {
            foreach (var entry in from.Entries)
            {
                using var stream = to.CreateEntry(entry.FullName, CompressionLevel.Optimal).Open();
                entry.Open().CopyTo(stream);
            }
        }

        return bytes.ToArray();
    }
}
