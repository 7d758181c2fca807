using System.Net;
using Underturf.Server;

namespace Underturf.Browser;

public sealed class ServerTests(ServedPage served)
{
    [Fact]
    public async Task The_offered_log_is_served_byte_for_byte()
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        var bytes = await client.GetByteArrayAsync(new Uri("log.jsonl", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(await File.ReadAllBytesAsync(Checkout.DemoLog, TestContext.Current.CancellationToken), bytes);
    }

    [Theory]
    [InlineData("")]
    [InlineData("log.jsonl")]
    [InlineData("thinking.js")]
    public async Task A_browser_is_told_to_ask_whether_its_copy_still_holds(string asked)
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        using var response = await client.GetAsync(new Uri(asked, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.True(response.Headers.CacheControl?.NoCache);
    }

    [Fact]
    public async Task A_request_in_the_name_of_another_host_is_refused()
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        using var request = new HttpRequestMessage(HttpMethod.Get, "log.jsonl");
        request.Headers.Host = "garden.example";
        using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, response.StatusCode);
    }

    [Fact]
    public void Only_loopback_is_listened_on() => Assert.Equal("127.0.0.1", served.Address.Host);

    [Fact]
    public async Task A_log_that_is_not_there_is_named_before_anything_is_served()
    {
        var problem = await ServerHost.RunAsync(new ServeOptions(0, "no-such-log.jsonl", _ => Assert.Fail("It served.")), TestContext.Current.CancellationToken);
        Assert.Equal("no-such-log.jsonl", problem!.Place);
    }

    [Fact]
    public async Task A_port_in_use_is_named_with_a_remedy()
    {
        var problem = await ServerHost.RunAsync(new ServeOptions(served.Address.Port, null, _ => Assert.Fail("It served.")), TestContext.Current.CancellationToken);
        Assert.Contains("--port", problem!.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(99_999)]
    public async Task A_number_that_is_no_port_is_refused(int port)
    {
        var problem = await ServerHost.RunAsync(new ServeOptions(port, null, _ => Assert.Fail("It served.")), TestContext.Current.CancellationToken);
        Assert.Equal($"port {port}", problem!.Place);
    }
}
