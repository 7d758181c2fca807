using System.Net;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp.Browser;

/// <summary>The core, run in the browser, on the log that the server offers or on one that the user picks.</summary>
/// <param name="server">Knows the address that the page came from.</param>
internal sealed class BrowserNotebook(HttpClient server) : INotebook
{
    /// <summary>Where the server offers the log, relative to the page.</summary>
    private const string OfferedLog = "demo.jsonl";

    /// <summary>One frame of the screen and a little more: long enough for the progress text to be painted, in milliseconds.</summary>
    private const int PaintMilliseconds = 40;

    public async Task<Outcome<ReadOnlyMemory<byte>>> FetchOfferedLogAsync()
    {
        try
        {
            return (ReadOnlyMemory<byte>)await server.GetByteArrayAsync(new Uri(OfferedLog, UriKind.Relative));
        }
        catch (HttpRequestException failure)
        {
            return new Problem(OfferedLog, Reason(failure), "Start the server again with the log's path, or open a log file below");
        }
    }

    public async Task<OpenedLog> OpenAsync(ReadOnlyMemory<byte> log)
    {
        // The core computes on the page's only thread; without this pause the reader would see no sign of it.
        await Task.Delay(PaintMilliseconds);
        var notebook = Notebook.Open(log, PracticeBook.Default);
        return new OpenedLog(notebook.Answer(), notebook.Problems);
    }

    private static string Reason(HttpRequestException failure) =>
        failure.StatusCode == HttpStatusCode.NotFound ? "the server offers no log" : "the server did not answer";
}
