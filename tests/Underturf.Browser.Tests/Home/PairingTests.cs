namespace Underturf.Browser;

/// <summary>A phone that reads the server's code.</summary>
public sealed class PairingTests(ServedPage page) : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("underturf-test-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task A_phone_without_the_code_is_told_to_read_it_and_one_with_it_keeps_the_pairing_and_not_in_its_address_bar()
    {
        var log = Path.Combine(folder.FullName, "garden.jsonl");
        File.Copy(Checkout.DemoLog, log);
        await using var door = await NetworkDoor.OpenAsync(log, Path.Combine(folder.FullName, "network"));
        await using var phone = await page.PhoneAsync(trusting: true);
        var shown = await phone.NewPageAsync();
        await shown.GotoAsync(door.Page.ToString());
        await shown.GetByText("is not paired with the server").WaitForAsync();
        var paired = await phone.NewPageAsync();
        await paired.GotoAsync(new UriBuilder(door.Page) { Fragment = $"pair={door.Secret}" }.Uri.ToString());
        await paired.Locator("[data-home=HasAll]").WaitForAsync();
        Assert.Equal(door.Page.ToString(), paired.Url);
        await shown.ReloadAsync();
        await shown.Locator("[data-home=HasAll]").WaitForAsync();
    }
}
