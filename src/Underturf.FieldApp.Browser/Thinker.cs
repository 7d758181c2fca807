using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.FieldApp.Browser;

/// <summary>The worker's side: called from wwwroot/worker.js in a runtime of its own, where nothing is drawn.</summary>
internal static partial class Thinker
{
    /// <summary>The bytes of an <see cref="OpenedLog"/> for those of a log.</summary>
    [JSExport]
    internal static byte[] Answer(byte[] log)
    {
        var notebook = Notebook.Open(log, PracticeBook.Default);
        return JsonSerializer.SerializeToUtf8Bytes(new OpenedLog(notebook.Answer(new Waiting(new Teller())), notebook.Problems), OpenedLogJson.Default.OpenedLog);
    }

    [JSImport("told", "worker")]
    private static partial void Told(double share);

    private sealed class Teller : IProgress<double>
    {
        public void Report(double value) => Told(value);
    }
}
