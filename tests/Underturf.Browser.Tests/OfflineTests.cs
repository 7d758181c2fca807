using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Browser;

public sealed class OfflineTests(ServedPage served)
{
    [Fact]
    public async Task After_the_first_load_the_page_opens_thinks_and_answers_with_the_server_off()
    {
        var server = await ServedLog.StartAsync(Checkout.DemoLog);
        var page = await served.OpenAsync(server.Address, widthPixels: 390);
        await ServedPage.WaitForAnswersAsync(page, "Served log");
        await page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");
        await server.DisposeAsync();
        await page.ReloadAsync();
        await ServedPage.WaitForAnswersAsync(page, "Served log");
        var native = Notebook.Answer(await File.ReadAllBytesAsync(Checkout.DemoLog, TestContext.Current.CancellationToken), PracticeBook.Default);
        Assert.Equal(native.Questions.Select(q => q.Symptom), (await ShownAnswers.ReadAsync(page)).Select(q => q.Symptom));
    }
}
