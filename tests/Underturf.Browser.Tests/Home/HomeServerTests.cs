using Microsoft.Playwright;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>Two phones at one server, and the server gone and back.</summary>
public sealed class HomeServerTests(ServedPage page) : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("underturf-test-");

    private string Log => Path.Combine(folder.FullName, "garden.jsonl");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Two_phones_end_with_the_same_log_as_the_server_one_of_them_having_noted_while_it_was_away()
    {
        File.Copy(Checkout.DemoLog, Log);
        var server = await ServedLog.StartAsync(Log, takesNotes: true);
        await using var first = await page.PhoneAsync();
        await using var second = await page.PhoneAsync();
        var (one, two) = (await ServedPage.OpenAsync(first, server.Address), await ServedPage.OpenAsync(second, server.Address));
        await Hand.NoteOhmsAsync(one, "1", "31");
        await one.Locator(".backup[data-notes='0']").WaitForAsync();
        await one.Locator("[data-home=HasAll]").WaitForAsync();
        await server.DisposeAsync();
        await Hand.NoteOhmsAsync(two, "2", "32");
        await two.Locator("[data-home=Away]").WaitForAsync();
        Assert.Equal("1", await two.Locator(".backup").GetAttributeAsync("data-notes"));
        await using var back = await ServedLog.StartAsync(Log, takesNotes: true, server.Address.Port);
        await OnLineAgainAsync(two);
        await two.Locator(".backup[data-notes='0']").WaitForAsync();
        await OnLineAgainAsync(one);
        await one.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Stations" }).ClickAsync();
        await one.Locator(".station[data-station=s2]").GetByText("32 ohm").First.WaitForAsync();
        var (held, here, there) = (await File.ReadAllBytesAsync(Log, TestContext.Current.CancellationToken), await Hand.SaveCopyAsync(one), await Hand.SaveCopyAsync(two));
        Assert.Equal(2, Hand.Own(LogDocument.Read(held)).Count);
        Assert.Equal(Hashes(held), Hashes(here));
        Assert.Equal(Hashes(held), Hashes(there));
    }

    private static Task OnLineAgainAsync(IPage phone) => phone.EvaluateAsync("() => dispatchEvent(new Event('online'))");

    private static IEnumerable<string> Hashes(byte[] log) => LogDocument.Read(log).Entries.Select(entry => entry.Header.Hash).Order();
}
