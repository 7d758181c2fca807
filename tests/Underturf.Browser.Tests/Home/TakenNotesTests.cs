using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>What the server does with lines that are handed to it, without a browser.</summary>
public sealed class TakenNotesTests : IAsyncLifetime
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("underturf-test-");
    private readonly HttpClient client = new();
    private ServedLog? served;

    private string Log => Path.Combine(folder.FullName, "garden.jsonl");

    public async ValueTask InitializeAsync()
    {
        await File.WriteAllBytesAsync(Log, demo);
        served = await ServedLog.StartAsync(Log, takesNotes: true);
        client.BaseAddress = served.Address;
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await served!.DisposeAsync();
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task What_the_log_lacks_is_added_behind_its_bytes_and_what_it_has_is_not_added_twice()
    {
        byte[] line = [.. Note("page-a", "one").Line.ToArray(), (byte)'\n'];
        Assert.Equal(1, (await PushAsync([.. demo, .. line])).Added);
        Assert.Equal(0, (await PushAsync(line)).Added);
        var held = await HeldAsync();
        Assert.Equal([.. demo, .. line], held);
        Assert.Equal(["garden.jsonl"], folder.EnumerateFiles().Select(file => file.Name));
    }

    [Fact]
    public async Task Many_at_once_are_all_added_and_the_log_is_sound()
    {
        var entries = Enumerable.Range(1, 12).Select(i => Note($"page-{i}", "one")).ToList();
        await Task.WhenAll(entries.Select(entry => PushAsync([.. entry.Line.Span, (byte)'\n'])));
        var log = LogDocument.Read(await HeldAsync());
        Assert.Superset(entries.Select(entry => entry.Header.Hash).ToHashSet(), log.Entries.Select(entry => entry.Header.Hash).ToHashSet());
        Assert.Equal(LogDocument.Read(demo).Problems, log.Problems);
    }

    [Fact]
    public async Task A_changed_line_and_one_of_another_property_are_refused_with_the_reason_and_the_others_are_taken()
    {
        var changed = Encoding.UTF8.GetString(Note("page-a", "one").Line.Span).Replace("Jory", "Mara", StringComparison.Ordinal);
        var stranger = Encoding.UTF8.GetString(Note("page-b", "two", "garden-2").Line.Span);
        var good = Encoding.UTF8.GetString(Note("page-c", "three").Line.Span);
        var answer = await PushAsync(Encoding.UTF8.GetBytes($"{changed}\n{stranger}\n{good}\n"));
        Assert.Equal(1, answer.Added);
        Assert.Equal(["line 1", "line 2, page-b/1"], answer.Places);
        var held = await HeldAsync();
        Assert.Equal([.. demo, .. Encoding.UTF8.GetBytes(good + "\n")], held);
    }

    [Fact]
    public async Task Another_site_cannot_add_to_the_log()
    {
        using var foreign = Lines(Note("page-a", "one").Line.ToArray());
        using var request = new HttpRequestMessage(HttpMethod.Post, "log.jsonl") { Content = foreign };
        request.Headers.Add("Origin", "https://garden.example");
        using var refused = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        using var form = new StringContent("a=b", Encoding.UTF8, "text/plain");
        using var simple = await client.PostAsync(new Uri("log.jsonl", UriKind.Relative), form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, simple.StatusCode);
        Assert.Equal(demo, await HeldAsync());
    }

    [Fact]
    public async Task A_page_that_has_the_newest_log_is_sent_nothing()
    {
        using var first = await client.GetAsync(new Uri("log.jsonl", UriKind.Relative), TestContext.Current.CancellationToken);
        using var again = new HttpRequestMessage(HttpMethod.Get, "log.jsonl");
        again.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using var second = await client.SendAsync(again, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotModified, second.StatusCode);
        Assert.Contains("POST", first.Content.Headers.Allow);
    }

    [Fact]
    public async Task A_server_that_only_shows_a_log_takes_nothing()
    {
        await using var showing = await ServedLog.StartAsync(Log);
        using var lines = Lines(Note("page-a", "one").Line.ToArray());
        using var refused = await client.PostAsync(new Uri(showing.Address, "log.jsonl"), lines, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, refused.StatusCode);
    }

    private Task<byte[]> HeldAsync() => File.ReadAllBytesAsync(Log, TestContext.Current.CancellationToken);

    private static Entry Note(string writer, string words, string property = "memorial-garden") =>
        Pen.Seal(property, writer, null, new HybridTime(1_932_600_000_000, 0), new ToldFact { Who = "Jory", Text = words }).Value;

    private static ByteArrayContent Lines(byte[] lines) => new(lines) { Headers = { ContentType = new MediaTypeHeaderValue("application/jsonl") } };

    private async Task<(int Added, string[] Places)> PushAsync(byte[] lines)
    {
        using var content = Lines(lines);
        using var answer = await client.PostAsync(new Uri("log.jsonl", UriKind.Relative), content, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using var said = JsonDocument.Parse(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        return (said.RootElement.GetProperty("added").GetInt32(), [.. said.RootElement.GetProperty("refused").EnumerateArray().Select(each => each.GetProperty("place").GetString()!)]);
    }
}
