using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using System.Text.Json.Serialization;
using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>The server that the page came from, asked over HTTP.</summary>
/// <param name="http">Knows the address that the page came from.</param>
internal sealed partial class BrowserHomeServer(HttpClient http) : IHomeServer
{
    private const string Module = "home-server";

    private static readonly Uri log = new("log.jsonl", UriKind.Relative);

    private Task? ready;

    public async Task<Outcome<OfferedLog>> PullAsync()
    {
        try
        {
            await ReadyAsync();
            using var answer = await http.GetAsync(log);
            answer.EnsureSuccessStatusCode();
            return new OfferedLog(await answer.Content.ReadAsByteArrayAsync(), answer.Content.Headers.Allow.Contains("POST"));
        }
        catch (Exception failure) when (failure is HttpRequestException or OperationCanceledException)
        {
            return Unheard(failure);
        }
    }

    public async Task<Outcome<PushAnswer>> PushAsync(ReadOnlyMemory<byte> lines)
    {
        try
        {
            using var content = new ReadOnlyMemoryContent(lines);
            content.Headers.ContentType = new MediaTypeHeaderValue("application/jsonl");
            using var answer = await http.PostAsync(log, content);
            answer.EnsureSuccessStatusCode();
            return (await answer.Content.ReadFromJsonAsync(PushAnswerJson.Default.PushAnswer))!;
        }
        catch (Exception failure) when (failure is HttpRequestException or OperationCanceledException or JsonException)
        {
            return Unheard(failure);
        }
    }

    public void Listen(Func<Task> perhapsNew) => _ = ListenAsync(perhapsNew);

    private async Task ListenAsync(Func<Task> perhapsNew)
    {
        await ReadyAsync();
        Hear(() => _ = perhapsNew());
    }

    private Task ReadyAsync() => ready ??= PairAsync();

    private async Task PairAsync()
    {
        await JSHost.ImportAsync(Module, "../home-server.js");
        if (Pairing() is { } secret)
        {
            http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", secret);
        }
    }

    [JSImport("pairing", Module)]
    private static partial string? Pairing();

    [JSImport("listen", Module)]
    private static partial void Hear([JSMarshalAs<JSType.Function>] Action told);

    private static Problem Unheard(Exception failure) => (failure as HttpRequestException)?.StatusCode switch
    {
        HttpStatusCode.Unauthorized => IHomeServer.Unpaired,
        HttpStatusCode.NotFound => new Problem(log.ToString(), "is offered by no server here", "Start the server again with the log's path, or open a log file below"),
        _ => new Problem(log.ToString(), "cannot be had: the server did not answer", "Start the server again with the log's path, or open a log file below"),
    };
}

/// <summary>How the server's answer is read.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PushAnswer))]
internal sealed partial class PushAnswerJson : JsonSerializerContext;
