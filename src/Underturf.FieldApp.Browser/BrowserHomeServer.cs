using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using System.Text.Json.Serialization;
using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>The server that the page came from, asked by the browser (wwwroot/home-server.js). An answer with "failed" names what kept it from being had.</summary>
internal sealed partial class BrowserHomeServer : IHomeServer
{
    private const string Module = "home-server";
    private const string Log = "log.jsonl";
    private const string Unpaired = "401";
    private const string NotThere = "404";

    private Task? ready;

    public async Task<Outcome<OfferedLog>> PullAsync()
    {
        await ReadyAsync();
        using var said = await AskAsync();
        return said.GetPropertyAsString("failed") is { } failed
            ? Unheard(failed)
            : new OfferedLog(said.GetPropertyAsByteArray("bytes"), said.GetPropertyAsBoolean("takesNotes"));
    }

    public async Task<Outcome<PushAnswer>> PushAsync(ReadOnlyMemory<byte> lines)
    {
        await ReadyAsync();
        using var said = await HandAsync(lines.ToArray());
        return said.GetPropertyAsString("failed") is { } failed ? Unheard(failed) : Read(said.GetPropertyAsString("text")!);
    }

    public void Listen(Func<Task> perhapsNew) => _ = ListenAsync(perhapsNew);

    private async Task ListenAsync(Func<Task> perhapsNew)
    {
        await ReadyAsync();
        Hear(() => _ = perhapsNew());
    }

    private Task ReadyAsync() => ready ??= JSHost.ImportAsync(Module, "../home-server.js");

    private static Outcome<PushAnswer> Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize(text, PushAnswerJson.Default.PushAnswer)!;
        }
        catch (JsonException)
        {
            return Unheard("");
        }
    }

    [JSImport("pull", Module)]
    private static partial Task<JSObject> AskAsync();

    [JSImport("push", Module)]
    private static partial Task<JSObject> HandAsync(byte[] lines);

    [JSImport("listen", Module)]
    private static partial void Hear([JSMarshalAs<JSType.Function>] Action told);

    private static Problem Unheard(string failed) => failed switch
    {
        Unpaired => IHomeServer.Unpaired,
        NotThere => new Problem(Log, "is offered by no server here", "Start the server again with the log's path, or open a log file below"),
        _ => new Problem(Log, "cannot be had: the server did not answer", "Start the server again with the log's path, or open a log file below"),
    };
}

/// <summary>How the server's answer is read.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PushAnswer))]
internal sealed partial class PushAnswerJson : JsonSerializerContext;
